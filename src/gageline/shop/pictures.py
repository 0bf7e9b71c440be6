"""Pictures of the sheets' room for the screen: cut to what is on them, fit for a strict content policy."""

from __future__ import annotations

import io
import re
from dataclasses import replace

import segno
import trimesh
from trimesh.viewer.notebook import scene_to_html
from trimesh.visual import ColorVisuals

from gageline.errors import GagelineError
from gageline.layout import Layout, PartLayout, Step
from gageline.part import Assembly
from gageline.sheets import Block, Group, Page, Paper, Sheet, extent, to_svg, unfolded_blocks
from gageline.solid import bodies_of

__all__ = ["block_svg", "cuts_svg", "page_svg", "qr_svg", "solid_page", "step_svg", "stick_svg"]

_SIZE = re.compile(r'width="[\d.]+mm" height="[\d.]+mm" viewBox="[^"]*"')
_STYLE = re.compile(r' style="[^"]*"')
_TITLE = re.compile(r"<title>.*?</title>")
_BACK = re.compile(r'<rect width="[\d.]+" height="[\d.]+" fill="#ffffff"/>\n?')
_PIECE = re.compile(r'<path (?=d="[^"]*" fill="#ffffff")')
_STEEL = (118, 124, 132, 255)
_EDGE = 2.0  # mm of paper around a picture
_WIDTHS = (92.0, 130.0, 180.0, 250.0)  # mm, the first that a step's readings fit into


def _stacked(blocks: tuple[Block, ...]) -> tuple[Group, ...]:
    groups, top = [], 0.0
    for block in blocks:
        groups.append(Group(block.items, 0.0, top))
        top += block.height
    return tuple(groups)


def _svg(page: Page, title: str, box: tuple[float, float, float, float]) -> str:
    """A page as SVG to stand in an HTML page: its own size, a name, no inline style."""
    left, top, right, bottom = box
    width, height = right - left + 2 * _EDGE, bottom - top + 2 * _EDGE
    view = f'viewBox="{left - _EDGE:.2f} {top - _EDGE:.2f} {width:.2f} {height:.2f}" class="sheet"'
    name = re.sub(r"[<>&\"]", " ", title)
    svg = _STYLE.sub("", _SIZE.sub(f'{view} role="img" aria-label="{name}"', to_svg(page), count=1))
    return _BACK.sub("", _TITLE.sub("", svg, count=1), count=1)


def stick_svg(laid: PartLayout, title: str, width: float = 250.0) -> str:
    """The unfolded stick of a part, every face with every mark.

    Args:
        laid: the part, laid out.
        title: for those who listen.
        width: of the drawing, mm.

    Returns:
        SVG to stand in a page; a sentence where the readings find no room.
    """
    try:
        items = _stacked(unfolded_blocks(laid, width, 180.0))
    except GagelineError as refused:
        return _no_picture(str(refused))
    box = extent(items)
    return _svg(Page(items, Paper.A4, title=title), title, (box.left, box.top, box.right, box.bottom))


def _no_picture(reason: str) -> str:
    words = re.sub(r"[<>&\"]", " ", reason)
    return f'<p class="said warning">No picture: {words}</p>'


def step_svg(layout: Layout, step: Step) -> str:
    """The picture of one step: its face from the datum, uneventful lengths cut out, its marks alone.

    Args:
        layout: of the piece.
        step: of its main part.

    Returns:
        SVG, empty for a step that strikes nothing.
    """
    laid = layout.main
    marks = tuple(mark for mark in laid.marks if step.for_ and _same(mark.for_, step.for_))
    if not marks or (step.face is None and step.for_ == "out-to-out"):
        return ""
    overall = tuple(one for one in laid.steps if one.for_ == "overall")
    own = (step,) if step.readings else tuple(one for one in laid.steps if one.for_ == step.for_)
    alone = replace(laid, marks=marks, steps=overall + tuple(one for one in own if one not in overall))
    face = step.face if any(mark.face is step.face for mark in marks) else marks[0].face
    for width in _WIDTHS:
        try:
            blocks = unfolded_blocks(alone, width, 150.0)
        except GagelineError:
            continue
        items = _stacked((blocks[laid.faces.index(face)],))
        box = extent(items)
        title = f"Step {step.number}: {step.title}"
        return _svg(Page(items, Paper.A4, title=title), title, (box.left, box.top, box.right, box.bottom))
    return ""


def _same(mark: str, step: str) -> bool:
    return mark.removesuffix(", other wall") == step.removesuffix(", other wall")


def block_svg(block: Block, title: str) -> str:
    """A picture of the sheets to stand in a page.

    Args:
        block: the picture.
        title: for those who listen.
    """
    box = extent(block.items)
    return _svg(Page(block.items, Paper.A4, title=title), title, (box.left, box.top, box.right, box.bottom))


def cuts_svg(block: Block, title: str, cuts: int) -> str:
    """The picture of a stick at the saw, each piece with the number of its cut.

    Args:
        block: the picture, its pieces white and drawn in order.
        title: for those who listen.
        cuts: how many pieces are cut from it.
    """
    first, *rest = _PIECE.split(block_svg(block, title), maxsplit=cuts)
    return first + "".join(f'<path data-cut="{number}" {piece}' for number, piece in enumerate(rest, 1))


def page_svg(sheet: Sheet) -> tuple[str, ...]:
    """The drawn pages of a sheet, each to stand in a page."""
    pages = (page for page in sheet.pages if isinstance(page, Page))
    return tuple(
        _svg(page, page.title, (_EDGE, _EDGE, page.width - _EDGE, page.height - _EDGE)) for page in pages
    )


def qr_svg(text: str) -> str:
    """A QR code of an address, to stand in a page.

    Source: ISO/IEC 18004, error correction level M.
    """
    out = io.BytesIO()
    segno.make(text, error="m", micro=False).save(
        out, kind="svg", xmldecl=False, svgns=True, omitsize=True, border=4, light="#ffffff", dark="#000000"
    )
    return out.getvalue().decode().replace("<svg ", '<svg aria-hidden="true" focusable="false" ', 1)


def solid_page(assembly: Assembly) -> str:
    """A page of its own in which the piece turns under the finger; it needs nothing from elsewhere."""
    scene = trimesh.Scene()
    for body in bodies_of(assembly):
        mesh = body.mesh()
        shape = trimesh.Trimesh(mesh.vertices, mesh.triangles, process=False)
        shape.visual = ColorVisuals(shape, face_colors=_STEEL)
        scene.add_geometry(shape, geom_name=body.name)
    page: str = scene_to_html(scene)
    title = re.sub(r"[<>&\"]", " ", f"{assembly.mark} in space")
    return page.replace("<title>trimesh: threejs viewer</title>", f"<title>{title}</title>", 1)
