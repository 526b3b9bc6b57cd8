"""Read one built page, and say what in it no page of ours may hold.

Elements are allowed by name; every address, event, style and script is looked at. Sources: the HTML standard's list of
attributes that hold an address, and of event handler attributes (all start with "on").
"""

from __future__ import annotations

import base64
import hashlib
import posixpath
import re
from collections.abc import Collection, Iterator
from dataclasses import dataclass, field
from urllib.parse import unquote

from selectolax.lexbor import LexborHTMLParser, LexborNode


def _names(text: str) -> frozenset[str]:
    return frozenset(text.split())


ELEMENTS = _names("""
    html head body title meta link script header footer main nav aside article section div span p a b i em strong small
    s u q sub sup code pre kbd samp var abbr cite dfn del ins mark time wbr br hr h1 h2 h3 h4 h5 h6 hgroup ul ol li dl dt
    dd menu blockquote figure figcaption details summary dialog table caption colgroup col thead tbody tfoot tr th td img
    picture form fieldset legend label input button select optgroup option datalist textarea output meter progress data
    bdi bdo address search svg g defs symbol use path line polyline polygon rect circle ellipse text tspan desc marker
    linearGradient radialGradient stop clipPath pattern mask lineargradient radialgradient clippath
    math mrow mi mn mo mfrac msup msqrt mtable mtr mtd mtext""")
ADDRESSES = _names("""
    href xlink:href src srcset action formaction poster data background cite longdesc manifest ping
    usemap codebase archive classid profile icon imagesrcset xml:base srcdoc attributionsrc""")
# Words for people: what is in them is shown, never fetched.
WORDING = _names("title alt content value placeholder label summary name id class d")
# Characters of a relative address. No colon: it would end a scheme. No backslash: browsers read it as a slash.
RELATIVE = re.compile(r"(?!/)[A-Za-z0-9._~!$&'()*+,;=@%/?#-]*\Z")
RELATIONS = frozenset({"icon", "stylesheet", "next", "prev"})
DATA_TYPES = frozenset({"application/json"})


@dataclass
class Page:
    """What the checks need of one page: `nodes` in document order, `ids` that a link can aim at, `links` as written."""

    name: str
    nodes: list[tuple[str, dict[str, str], str]] = field(default_factory=list)
    ids: set[str] = field(default_factory=set)
    links: set[str] = field(default_factory=set)
    inline_scripts: list[str] = field(default_factory=list)
    script_files: set[str] = field(default_factory=set)


def read_page(name: str, text: str) -> Page:
    """Parse a page of the site; `name` is its path in the site."""
    page = Page(name)
    for node in _elements(LexborHTMLParser(text)):
        tag = node.tag or ""
        attributes = {key.lower(): value or "" for key, value in node.attributes.items()}
        code = node.text(deep=True) if tag == "script" else ""
        page.nodes.append((tag, attributes, code))
        page.ids.update(attributes[key] for key in ("id", "name") if key in attributes and (key == "id" or tag == "a"))
        page.links.update(attributes[key] for key in ("href", "src", "xlink:href") if key in attributes)
        if tag == "script" and "src" in attributes:
            page.script_files.add(resolve(name, attributes["src"])[0])
        elif tag == "script" and attributes.get("type", "") not in DATA_TYPES:
            page.inline_scripts.append(code)
    return page


def resolve(page: str, address: str) -> tuple[str, str]:
    """Site path and fragment that a relative address means on a page; an empty path is the page itself."""
    path, _, fragment = address.partition("#")
    path = unquote(path.partition("?")[0])
    target = posixpath.normpath(posixpath.join(posixpath.dirname(page), path)) if path else page
    return (target + "/" if path.endswith("/") else target), unquote(fragment)


def hash_of(script: str) -> str:
    """The name by which a content security policy knows an inline script (CSP Level 3, hash-source)."""
    return "sha256-" + base64.b64encode(hashlib.sha256(script.encode("utf-8")).digest()).decode("ascii")


def page_problems(page: Page, hashes: Collection[str], scripts: Collection[str], policy: str | None) -> list[str]:
    """One line for each thing that the page may not hold; `policy` None for a picture, which carries none."""
    problems = []
    bound = policy is None
    for tag, attributes, code in page.nodes:
        if tag == "meta" and "http-equiv" in attributes:
            ours = attributes["http-equiv"] == "Content-Security-Policy" and attributes.get("content") == policy
            bound = bound or ours
            if not ours:
                problems.append(f"<meta http-equiv={attributes['http-equiv'][:40]!r}> is not allowed")
        if tag in ("script", "link", "body") and not bound:
            problems.append(f"<{tag}> comes before the content security policy")
            bound = True
        problems += _element_problems(page.name, tag, attributes, code, hashes, scripts)
    return [f"{page.name}: {problem}" for problem in problems]


def css_problems(name: str, text: str) -> list[str]:
    """Addresses in a style sheet must be data in the sheet itself or a part of the page (`#id`); nothing is imported."""
    problems = [
        f"{name}: url({target[:60]}) is not part of the style sheet"
        for target in re.findall(r"url\(\s*['\"]?([^)'\"]*)", text, re.IGNORECASE)
        if not target.startswith(("data:", "#"))
    ]
    return problems + ([f"{name}: @import is not allowed"] if re.search(r"@import", text, re.IGNORECASE) else [])


def _elements(tree: LexborHTMLParser) -> Iterator[LexborNode]:
    root = tree.root
    return (
        iter(())
        if root is None
        else (n for n in root.traverse(include_text=False) if not (n.tag or "").startswith("-"))
    )


def _element_problems(
    page: str, tag: str, attributes: dict[str, str], code: str, hashes: Collection[str], scripts: Collection[str]
) -> Iterator[str]:
    if tag not in ELEMENTS:
        yield f"<{tag}> is not allowed"
    if tag == "script" and "src" in attributes and resolve(page, attributes["src"])[0] not in scripts:
        yield f"<script src={attributes['src'][:60]!r}> is not one of the site's own scripts"
    inline = tag == "script" and "src" not in attributes and attributes.get("type", "") not in DATA_TYPES
    if inline and hash_of(code) not in hashes:
        yield f"unknown inline script, starts {code.strip()[:40]!r}"
    if tag == "link" and not set(attributes.get("rel", "").lower().split()) <= RELATIONS:
        yield f"<link rel={attributes.get('rel')!r}> is not allowed"
    for key, value in attributes.items():
        if key.startswith("on") or key in ("ping", "srcdoc", "xml:base", "attributionsrc", "shadowrootmode"):
            yield f"attribute {key} on <{tag}> is not allowed"
        elif key in ADDRESSES and not RELATIVE.match(value):
            yield f"{key}={value[:60]!r} on <{tag}> leads out of the site"
        elif key == "style" and re.search(r"\\|url|import|expression|@", value, re.IGNORECASE):
            yield f"style={value[:60]!r} on <{tag}> may not name an address"
        elif (
            key not in WORDING
            and not key.startswith(("data-", "aria-"))
            and re.search(r"url\((?!#)", value, re.IGNORECASE)
        ):
            yield f"{key}={value[:60]!r} on <{tag}> names an address outside the page"
