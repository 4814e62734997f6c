"""A drawing in SVG: read by an XML parser that resolves nothing, and held against what may stand.

In: the bytes of a file. Out: the first thing in it that could run or fetch something, or None.
Opened by itself a drawing is a page, so nothing is looked for in its text: it is parsed as the
browser parses it, and what is not allowed is refused.
"""

from xml.parsers import expat

from builder.pictures.allowed import SVG, fetches_nothing, may_be_set, may_stand
from builder.pictures.unfit import Unfit

PLAIN = "save it as a plain drawing, without scripts and with all of it in this file"
NOT_PLAIN = "is none of the plain words of a drawing; it could run or fetch something"
UTF_8 = "save it as UTF-8"


def unfit_drawing(raw: bytes) -> Unfit | None:
    """Return what is wrong with a drawing."""
    try:
        text = raw.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        before = raw[: error.start]
        column = len(before.rpartition(b"\n")[2].decode("utf-8", "replace")) + 1
        return Unfit("this drawing is not UTF-8", UTF_8, before.count(b"\n") + 1, column)
    return _Parsing().run(text)


class _StopError(Exception):
    """Ends the parsing at the first thing that may not stand."""


class _Parsing:
    """One pass over a drawing, from its first sign to the first that may not stand."""

    def __init__(self) -> None:
        self.parser = parser = expat.ParserCreate("utf-8", namespace_separator=" ")
        self.found: Unfit | None = None
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

    def run(self, text: str) -> Unfit | None:
        try:
            self.parser.Parse(text.encode(), True)
        except _StopError:
            return self.found
        except expat.ExpatError as error:
            words = expat.ErrorString(error.code)
            return Unfit(f"this drawing is no XML that can be read: {words}", PLAIN,
                         error.lineno, error.offset + 1)  # fmt: skip
        return None

    def refuse(self, message: str, hint: str = PLAIN) -> None:
        at = self.parser
        self.found = Unfit(message, hint, at.CurrentLineNumber, at.CurrentColumnNumber + 1)
        raise _StopError

    def declaration(self, _version: str, encoding: str | None, _standalone: int) -> None:
        if encoding and encoding.lower() != "utf-8":
            self.refuse(f"this drawing says that it is `{encoding}`", UTF_8)

    def doctype(self, *_parts: object) -> None:
        self.refuse("this drawing has a `<!DOCTYPE>`, which can give words another meaning",
                    "delete it, from `<!DOCTYPE` to its `>`")  # fmt: skip

    def entity(self, *_parts: object) -> None:
        self.refuse("this drawing makes an entity of its own", "write the text out")

    def instruction(self, target: str, _text: str) -> None:
        self.refuse(f"this drawing gives an instruction, `<?{target[:40]}`", "delete it")

    def start(self, name: str, attributes: dict[str, str]) -> None:
        namespace, _, element = name.rpartition(" ")
        if self.depth == 0 and name != f"{SVG} svg":
            self.refuse(f"this drawing begins with `<{element}>` and not as SVG",
                        f'begin it with `<svg xmlns="{SVG}">`')  # fmt: skip
        if self.style is not None or not may_stand(namespace, element):
            self.refuse(f"`<{element[:40]}>` {NOT_PLAIN}")
        for long, value in attributes.items():
            of, _, attribute = long.rpartition(" ")
            if not may_be_set(element, of, attribute, value):
                words = f'{attribute}="{value}"'[:60]
                self.refuse(f"`{words}` {NOT_PLAIN}")
        self.depth += 1
        self.style = [] if name == f"{SVG} style" else None

    def end(self, _name: str) -> None:
        self.depth -= 1
        if self.style is not None and not fetches_nothing("".join(self.style)):
            self.refuse("a style in this drawing can fetch something")
        self.style = None  # nothing may stand inside a style, so this is its end

    def characters(self, text: str) -> None:
        if self.style is not None:
            self.style.append(text)
