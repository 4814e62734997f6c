"""A drawing that could run or fetch something is refused, however it is written.

What browsers take for a script, a link or a style is after SVG 2, XML 1.0 and CSS Syntax 3 (W3C);
the cases are from memory of how filters of text were walked around.
"""

import codecs

import pytest

from builder.pictures.drawings import drawing_problem

LINK = 'xmlns:xlink="http://www.w3.org/1999/xlink"'
HEAD = f'<svg xmlns="http://www.w3.org/2000/svg" {LINK}'
PLAIN = {
    "lines and text": f'{HEAD}><path d="M0 0h9"/><text>one = 1, on = 12 V</text></svg>',
    "a part used twice": f'{HEAD}><g id="plug"/><use href="#plug"/><use xlink:href="#plug"/></svg>',
    "pixels inside": f'{HEAD}><image href="data:image/png;base64,AAAA\n AA=="/></svg>',
    "a gradient": f"{HEAD}><linearGradient id='a'><stop offset='0' stop-color='rgb(1,2,3)'/>"
    "</linearGradient><path fill='url(#a)' style='fill:url( \"#a\" );stroke:#123'/></svg>",
    "a style": f"{HEAD}><style>.a, g > b {{fill: rgb(0 0 0); marker: url(#m)}}</style></svg>",
    "a style as raw text": f"{HEAD}><style><![CDATA[.a{{fill:red}}]]></style></svg>",
    "words with brackets": f'{HEAD} aria-label="Voltage (12 V) <at> url" role="img"/>'.replace(
        "<at>", "&lt;at&gt;"
    ),
    "declared as UTF-8": f'<?xml version="1.0" encoding="utf-8"?>{HEAD}/>',
    "with a byte order mark": f"\ufeff{HEAD}/>",
    "notes of a program": f"{HEAD} xmlns:i='http://www.inkscape.org/namespaces/inkscape'"
    " i:version='1'><metadata/><i:grid i:x='http://x.example'/></svg>",
    "a comment": f"{HEAD}><!-- <script>go()</script> --></svg>",
    "a prefix of its own": '<s:svg xmlns:s="http://www.w3.org/2000/svg"><s:g/></s:svg>',
}
UNSAFE = {
    "a script": f"{HEAD}><script>go()</script></svg>",
    "a script with a prefix": '<s:svg xmlns:s="http://www.w3.org/2000/svg"><s:script/></s:svg>',
    "a script of pages": f'{HEAD}><h:script xmlns:h="http://www.w3.org/1999/xhtml"/></svg>',
    "a > in quotes before": f'{HEAD} aria-label=">" onload="go()"/>',
    "an event on a new line": f'{HEAD}\n onload="go()"/>',
    "an event of any name": f'{HEAD} onwhatever="go()"/>',
    "an event with a prefix of notes": f"{HEAD} xmlns:i='http://elsewhere.example' i:onload='x'/>",
    "a link": f'{HEAD}><a xlink:href="https://elsewhere.example"><path/></a></svg>',
    "a link to a script": f'{HEAD}><a href="java&#10;script:go()"/></svg>',
    "a script in entities": f'{HEAD}><use href="&#106;avascript:go()"/></svg>',
    "a part from elsewhere": f'{HEAD}><use href="https://elsewhere.example/a.svg#b"/></svg>',
    "a part from beside": f'{HEAD}><use href="other.svg#b"/></svg>',
    "a part inside data": f'{HEAD}><use href="data:image/svg+xml;base64,AA#b"/></svg>',
    "a picture fetched": f'{HEAD}><image href="https://elsewhere.example/x.png"/></svg>',
    "a picture beside": f'{HEAD}><image href="x.png"/></svg>',
    "a drawing inside": f'{HEAD}><image href="data:image/svg+xml;base64,AA"/></svg>',
    "a base": f'{HEAD} xml:base="https://elsewhere.example/"/>',
    "a page inside": f"{HEAD}><foreignObject><p/></foreignObject></svg>",
    "a frame": f'{HEAD}><iframe src="x"/></svg>',
    "a set": f'{HEAD}><a><set attributeName="href" to="javascript:go()"/></a></svg>',
    "an animation": f'{HEAD}><animate attributeName="href" values="javascript:go()"/></svg>',
    "a handler": f'{HEAD}><handler xmlns="http://www.w3.org/2001/xml-events"/></svg>',
    "a style that imports": f'{HEAD}><style>@import "https://elsewhere.example"</style></svg>',
    "a style that fetches": f"{HEAD}><style>g{{fill:URL(//elsewhere.example)}}</style></svg>",
    "a style in escapes": f"{HEAD}><style>g{{fill:\\75rl(//elsewhere.example)}}</style></svg>",
    "a style in two halves": f"{HEAD}><style>g{{fill:u<g/>rl(//elsewhere.example)}}</style></svg>",
    "a style behind an element": f"{HEAD}><style><g/>@import '//elsewhere.example'</style></svg>",
    "a style by a comment": f"{HEAD}><style>g{{fill:/**/image-set('//e' 1x)}}</style></svg>",
    "a value that fetches": f'{HEAD}><path fill="url(//elsewhere.example#a)"/></svg>',
    "a style of one element": f"{HEAD}><path style=\"fill:url('//elsewhere.example')\"/></svg>",
    "a cursor": f'{HEAD} cursor="url(//elsewhere.example), auto"/>',
    "a filter's picture": f'{HEAD}><filter><feImage href="//elsewhere.example"/></filter></svg>',
    "an entity": f'<!DOCTYPE svg [<!ENTITY a "b">]>{HEAD}/>',
    "an entity from elsewhere": f'<!DOCTYPE svg SYSTEM "//elsewhere.example">{HEAD}/>',
    "attributes from a list": f"<!DOCTYPE svg [<!ATTLIST svg onload CDATA 'go()'>]>{HEAD}/>",
    "a style sheet": f'<?xml-stylesheet href="//elsewhere.example"?>{HEAD}/>',
    "no names of SVG": "<svg><path/></svg>",
    "a page": '<html xmlns="http://www.w3.org/1999/xhtml"/>',
    "cut off": f"{HEAD}><path",
    "nothing": "",
}
OTHER = f"{HEAD}><script>go()</script></svg>"
ENCODED = {
    "UTF-16": OTHER.encode("utf-16"),
    "UTF-16 without a mark": OTHER.encode("utf-16-le"),
    "UTF-16 by its declaration": f'<?xml version="1.0" encoding="utf-16"?>{HEAD}/>'.encode(),
    "UTF-32": OTHER.encode("utf-32"),
    "UTF-7": codecs.encode(f'<?xml version="1.0" encoding="utf-7"?>{OTHER}', "utf-7"),
    "ISO-2022-JP": f'<?xml version="1.0" encoding="iso-2022-jp"?>{HEAD} id="\x1b$B"/>'.encode(),
    "Latin-1": f'{HEAD} id="\xfc"/>'.encode("latin-1"),
    "NUL characters": OTHER.replace("script", "scr\0ipt").encode(),
}


@pytest.mark.parametrize("name", PLAIN)
def test_a_plain_drawing_is_taken(name: str) -> None:
    """Drawing programs write styles, gradients and notes of their own, and none of them runs."""
    assert drawing_problem(PLAIN[name].encode()) is None


@pytest.mark.parametrize("name", UNSAFE)
def test_a_drawing_that_could_run_or_fetch_is_refused(name: str) -> None:
    """Opened by itself, a drawing with a script is a page that runs it."""
    wrong = drawing_problem(UNSAFE[name].encode())
    assert wrong
    assert wrong.hint
    lines = UNSAFE[name].split("\n")
    assert 1 <= wrong.line <= len(lines)
    assert 1 <= wrong.column <= len(lines[wrong.line - 1]) + 1


@pytest.mark.parametrize("name", ENCODED)
def test_a_drawing_in_another_encoding_is_refused(name: str) -> None:
    """What we read as one thing and a browser as another could hold anything."""
    assert drawing_problem(ENCODED[name])


def test_a_deep_or_wide_drawing_ends_nothing() -> None:
    """Elements inside each other by the hundred thousand are read without a traceback."""
    assert drawing_problem(f"{HEAD}>{'<g>' * 200_000}".encode())
    assert drawing_problem(f"{HEAD}>{'<g/>' * 200_000}</svg>".encode()) is None
