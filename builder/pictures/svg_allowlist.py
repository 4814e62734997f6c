"""What is allowed in a drawing: elements, attributes and values of SVG that run and fetch nothing.

In: names and values from an XML parser. Out: whether they are allowed. The names are of Scalable
Vector Graphics (SVG) 2, W3C; anything not on a list is refused, so nothing new slips in.
"""

import re

SVG = "http://www.w3.org/2000/svg"
XLINK = "http://www.w3.org/1999/xlink"
XML = "http://www.w3.org/XML/1998/namespace"
# Metadata of drawing programs: browsers ignore it.
INERT = (
    "http://www.inkscape.org/namespaces/inkscape",
    "http://sodipodi.sourceforge.net/DTD/sodipodi-0.dtd",
    "http://www.w3.org/1999/02/22-rdf-syntax-ns#",
    "http://creativecommons.org/ns#",
    "http://web.resource.org/cc/",
    "http://purl.org/dc/elements/1.1/",
)
_ELEMENTS = """
svg g defs symbol use switch title desc metadata style path rect circle ellipse line polyline
polygon text tspan textPath image linearGradient radialGradient stop clipPath mask pattern marker
filter feGaussianBlur feOffset feMerge feMergeNode feColorMatrix feFlood feBlend feComposite
feDropShadow
"""
_ATTRIBUTES = """
id class style lang role tabindex version baseProfile viewBox preserveAspectRatio width height x y
x1 y1 x2 y2 cx cy r rx ry fx fy fr dx dy d points pathLength transform rotate textLength
lengthAdjust startOffset method spacing side offset gradientUnits gradientTransform spreadMethod
patternUnits patternContentUnits patternTransform clipPathUnits maskUnits maskContentUnits
markerUnits markerWidth markerHeight refX refY orient filterUnits primitiveUnits in in2 result
stdDeviation mode operator values type k1 k2 k3 k4 systemLanguage requiredFeatures
enable-background alignment-baseline baseline-shift clip clip-path clip-rule color
color-interpolation color-interpolation-filters color-rendering cursor direction display
dominant-baseline fill fill-opacity fill-rule filter flood-color flood-opacity font font-family
font-size font-size-adjust font-stretch font-style font-variant font-weight
glyph-orientation-horizontal glyph-orientation-vertical image-rendering isolation kerning
letter-spacing lighting-color marker marker-end marker-mid marker-start mask mask-type
mix-blend-mode opacity overflow paint-order pointer-events shape-rendering stop-color stop-opacity
stroke stroke-dasharray stroke-dashoffset stroke-linecap stroke-linejoin stroke-miterlimit
stroke-opacity stroke-width text-anchor text-decoration text-overflow text-rendering unicode-bidi
vector-effect visibility white-space word-spacing writing-mode transform-origin
"""
OF_XML = ("space", "lang")
WORDS = ("id", "class", "lang", "role", "font-family")  # values that are names, never calls
OWN_PART = re.compile(r"#[\w.:-]+")
PIXELS_INSIDE = re.compile(r"data:image/(?:png|jpeg|gif|webp);base64,[A-Za-z0-9+/=\s]*")
_CALLS = """
rgb rgba hsl hsla matrix translate translateX translateY scale scaleX scaleY rotate skewX skewY
"""  # the functions of CSS that fetch nothing
ELEMENTS, ATTRIBUTES, CALLS = (
    frozenset(words.split()) for words in (_ELEMENTS, _ATTRIBUTES, _CALLS)
)
CALL = re.compile(r"([\w-]*)\(")
OWN_URL = re.compile(r"url\(\s*(['\"]?)#[\w.:-]+\1\s*\)")


def is_element_allowed(namespace: str, element: str) -> bool:
    """Whether an element is allowed in a drawing."""
    return namespace in INERT or (namespace == SVG and element in ELEMENTS)


def is_attribute_allowed(element: str, namespace: str, attribute: str, value: str) -> bool:
    """Whether an attribute with this value is allowed on an element."""
    if namespace in INERT:
        return True
    if namespace == XML:
        return attribute in OF_XML
    if attribute == "href" and namespace in ("", XLINK):
        return bool((PIXELS_INSIDE if element == "image" else OWN_PART).fullmatch(value.strip(" ")))
    if namespace:
        return namespace == XLINK and attribute in ("type", "title", "show", "actuate")
    if attribute.startswith(("data-", "aria-")):
        return True
    return attribute in ATTRIBUTES and (attribute in WORDS or is_style_allowed(value))


def is_style_allowed(style: str) -> bool:
    """Whether a value or a style sheet refers only to the drawing itself."""
    if "\\" in style or "@" in style or "<" in style:
        return False  # an escape can spell any word; an at-rule can import
    return all(name in CALLS for name in CALL.findall(OWN_URL.sub(" ", style)))
