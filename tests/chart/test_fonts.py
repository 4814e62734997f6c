"""The faces: widths as the PDF library has them, every sign a chart needs, the licence beside."""

import pytest
from fontTools.ttLib import TTFont
from hypothesis import given
from hypothesis import strategies as st
from reportlab.pdfbase import pdfmetrics

from builder.chart.fonts import FACES, LEADING, Face, bold, medium
from builder.prints.sheet import register_faces

BOTH = [medium(), bold()]


@pytest.mark.parametrize("face", BOTH, ids=lambda face: face.name)
@given(text=st.text(st.sampled_from(sorted(medium().advances)), max_size=60))
def test_widths_are_those_of_the_pdf(face: Face, text: str) -> None:
    """reportlab (reference library) sets every line exactly as wide as it was measured."""
    register_faces()
    assert face.width(text, 12) == pytest.approx(pdfmetrics.stringWidth(text, face.name, 12))


@pytest.mark.parametrize("face", BOTH, ids=lambda face: face.name)
def test_no_sign_of_a_chart_is_missing(face: Face) -> None:
    """Units, limits, arrows, boxes to tick and the warning sign are in the face."""
    assert not [sign for sign in "ΩµΔ°±≤≥≠½×÷→←↑↓✓✗☐⚠▲▼■◆–“”·²\N{NO-BREAK SPACE}"
                if sign not in face.advances]  # fmt: skip


@pytest.mark.parametrize("face", BOTH, ids=lambda face: face.name)
def test_the_page_serves_the_same_widths(face: Face) -> None:
    """The WOFF2 that a page loads has the advances that charts are measured with."""
    with TTFont(face.file.with_suffix(".woff2")) as served:
        em = served["head"].unitsPerEm
        metrics = served["hmtx"].metrics
        widths = {chr(code): metrics[name][0] / em for code, name in served.getBestCmap().items()}
        missing = metrics[".notdef"][0] / em
    assert (widths, missing) == (face.advances, face.missing)


def test_lines_do_not_touch() -> None:
    """Two lines set close leave room between descenders and capitals."""
    for face in BOTH:
        assert face.descent + face.capital < LEADING


def test_the_licence_lies_beside_the_faces() -> None:
    """The SIL Open Font License goes with the files, and reserves no name."""
    text = (FACES / "OFL.txt").read_text()
    assert "SIL OPEN FONT LICENSE Version 1.1" in text
    assert "with Reserved Font Name" not in text.split("-----")[0]
