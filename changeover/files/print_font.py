"""The font of the printed sheets, embedded so that every sign prints on every printer."""

import re
from functools import cache
from typing import TYPE_CHECKING

from changeover.bundled import bundled

if TYPE_CHECKING:
    from reportlab.pdfbase.ttfonts import TTFont

PLAIN, BOLD = "DejaVuSans", "DejaVuSans-Bold"
_NARROW = str.maketrans({"\u202f": "\u00a0", "\u2009": "\u00a0", "\t": " "})
_CONTROL = re.compile(r"[\x00-\x08\x0b-\x1f\x7f]")


@cache
def _font(name: str) -> "TTFont":
    from reportlab.pdfbase import pdfmetrics
    from reportlab.pdfbase.ttfonts import TTFont

    font = TTFont(name, str(bundled("resources", "fonts", f"{name}.ttf")))
    pdfmetrics.registerFont(font)
    return font


def use_fonts() -> None:
    """Register both fonts with reportlab, once, bold under the family of the plain one."""
    from reportlab.pdfbase.pdfmetrics import registerFontFamily

    _font(PLAIN)
    _font(BOLD)
    registerFontFamily(PLAIN, normal=PLAIN, bold=BOLD, italic=PLAIN, boldItalic=BOLD)


def printable(text: str) -> str:
    """Return a text with every sign that the font lacks replaced by ``?``, never by a box."""
    known = _font(PLAIN).face.charToGlyph
    plain = _CONTROL.sub(" ", text.translate(_NARROW))
    return "".join(sign if sign == "\n" or ord(sign) in known else "?" for sign in plain)


def marked_up(text: str) -> str:
    """Return a printable text with the signs of mark-up escaped, for a paragraph."""
    plain = printable(text)
    return plain.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;")
