"""SVG drawings: parsed without resolving anything, and compared with the allowlist.

In: the bytes of a file. Out: the first thing in it that could run or fetch something, or None. A
drawing opened by itself is a web page. So its text isn't searched: it is parsed as a browser parses
it, and everything that isn't allowed is refused.
"""

from xml.parsers import expat

from builder.pictures.problem import PictureProblem
from builder.pictures.svg_allowlist import (
    SVG,
    is_attribute_allowed,
    is_element_allowed,
    is_style_allowed,
)

PLAIN = "save it as plain SVG, without scripts or links to other files"
NOT_PLAIN = "isn't allowed in a drawing; it could run or fetch something"
UTF_8 = "save it as UTF-8"


def drawing_problem(raw: bytes) -> PictureProblem | None:
    """Return what is wrong with a drawing, or None."""
    try:
        text = raw.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        before = raw[: error.start]
        column = len(before.rpartition(b"\n")[2].decode("utf-8", "replace")) + 1
        return PictureProblem("this drawing isn't UTF-8", UTF_8, before.count(b"\n") + 1, column)
    return _Parsing().run(text)


class _StopError(Exception):
    """Stops the parsing at the first problem."""


class _Parsing:
    """One pass over a drawing, up to the first problem."""

    def __init__(self) -> None:
        self.parser = parser = expat.ParserCreate("utf-8", namespace_separator=" ")
        self.problem: PictureProblem | None = None
        self.depth = 0
        self.style: list[str] | None = None  # the text of a style sheet that is open
        parser.buffer_text = True
        parser.XmlDeclHandler = self.declaration
        parser.StartDoctypeDeclHandler = self.doctype
        parser.EntityDeclHandler = self.entity
        parser.ProcessingInstructionHandler = self.instruction
        parser.StartElementHandler = self.start
        parser.EndElementHandler = self.end
        parser.CharacterDataHandler = self.characters

    def run(self, text: str) -> PictureProblem | None:
        try:
            self.parser.Parse(text.encode(), True)
        except _StopError:
            return self.problem
        except expat.ExpatError as error:
            words = expat.ErrorString(error.code)
            return PictureProblem(f"this drawing isn't well-formed XML: {words}", PLAIN,
                         error.lineno, error.offset + 1)  # fmt: skip
        return None

    def refuse(self, message: str, hint: str = PLAIN) -> None:
        at = self.parser
        self.problem = PictureProblem(
            message, hint, at.CurrentLineNumber, at.CurrentColumnNumber + 1
        )
        raise _StopError

    def declaration(self, _version: str, encoding: str | None, _standalone: int) -> None:
        if encoding and encoding.lower() != "utf-8":
            self.refuse(f"this drawing declares the encoding `{encoding}`", UTF_8)

    def doctype(self, *_parts: object) -> None:
        self.refuse("this drawing has a `<!DOCTYPE>`, which can redefine its text",
                    "delete it, from `<!DOCTYPE` to its `>`")  # fmt: skip

    def entity(self, *_parts: object) -> None:
        self.refuse("this drawing defines an entity", "write the text out")

    def instruction(self, target: str, _text: str) -> None:
        self.refuse(f"this drawing has a processing instruction, `<?{target[:40]}`", "delete it")

    def start(self, name: str, attributes: dict[str, str]) -> None:
        namespace, _, element = name.rpartition(" ")
        if self.depth == 0 and name != f"{SVG} svg":
            self.refuse(f"this drawing starts with `<{element}>`, not with SVG",
                        f'start it with `<svg xmlns="{SVG}">`')  # fmt: skip
        if self.style is not None or not is_element_allowed(namespace, element):
            self.refuse(f"`<{element[:40]}>` {NOT_PLAIN}")
        for full_name, value in attributes.items():
            space, _, attribute = full_name.rpartition(" ")
            if not is_attribute_allowed(element, space, attribute, value):
                words = f'{attribute}="{value}"'[:60]
                self.refuse(f"`{words}` {NOT_PLAIN}")
        self.depth += 1
        self.style = [] if name == f"{SVG} style" else None

    def end(self, _name: str) -> None:
        self.depth -= 1
        if self.style is not None and not is_style_allowed("".join(self.style)):
            self.refuse("a style in this drawing can fetch something")
        self.style = None  # a style has no child elements, so this is its end

    def characters(self, text: str) -> None:
        if self.style is not None:
            self.style.append(text)
