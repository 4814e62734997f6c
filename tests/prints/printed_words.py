"""What can be read on a print."""

from io import BytesIO

from pypdf import PdfReader


def words(pdf: bytes) -> str:
    """Return the text of a PDF on one line, blanks and lines to write on as one space."""
    pages = PdfReader(BytesIO(pdf), strict=True).pages
    return " ".join(" ".join(page.extract_text() for page in pages).split())
