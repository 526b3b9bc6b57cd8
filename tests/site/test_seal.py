"""What no page may hold is refused, each with its own line; a clean page is bound to the policy.

Attributes and elements that fetch or run are those of the HTML standard (recalled, its text was not open).
"""

from __future__ import annotations

import pytest

from bayleaf.site import SealError
from bayleaf.site.markup import hash_of
from bayleaf.site.seal import seal

INLINE = "document.title"
HEAD = f'<!doctype html><html><head><meta charset="utf-8"><title>t</title><script src="app.js"></script><script>{INLINE}</script></head>'


@pytest.fixture
def site(tmp_path):
    """A site of one page, `index.html`, and a probe that allows app.js and one inline script."""
    (tmp_path / "probe.html").write_text(HEAD + "<body></body></html>")
    (tmp_path / "app.js").write_text("")
    (tmp_path / "evil.js").write_text("")
    (tmp_path / "sitemap.xml").write_text("")

    def sealed(body: str, head: str = HEAD) -> str:
        (tmp_path / "index.html").write_text(f"{head}<body>{body}</body></html>")
        seal(tmp_path, ["probe.html"])
        return (tmp_path / "index.html").read_text()

    sealed.folder = tmp_path
    return sealed


def test_a_clean_page_is_bound_before_anything_runs(site):
    text = site('<h1 id="a">A</h1><a href="#a">up</a>')
    assert text.index("Content-Security-Policy") < text.index("<script")
    assert "default-src &#x27;none&#x27;" in text
    assert hash_of(INLINE) in text


def test_sitemaps_and_probes_are_gone(site):
    site("")
    assert sorted(path.name for path in site.folder.iterdir()) == ["app.js", "evil.js", "index.html"]


def test_the_hash_is_the_one_of_the_standard():
    # Content Security Policy Level 3, section on hash usage: 'alert("Hello, world.");' (value recalled)
    assert hash_of("alert('Hello, world.');") == "sha256-qznLcsROx4GACP2dm0UCKCzCG+HiZ1guq6ZZDob/Tng="


@pytest.mark.parametrize(
    ("body", "says"),
    [
        ("<script>alert(1)</script>", "unknown inline script"),
        ('<script src="evil.js"></script>', "not one of the site's own scripts"),
        ('<script type="importmap">{}</script>', "unknown inline script"),
        ('<script type="speculationrules">{}</script>', "unknown inline script"),
        ('<p onclick="x()">p</p>', "attribute onclick on <p>"),
        ("<svg ONLOAD=x()></svg>", "attribute onload on <svg>"),
        ('<a href="https://example.org/">a</a>', "leads out of the site"),
        ('<a href="//example.org/">a</a>', "leads out of the site"),
        (r'<a href="\\example.org/">a</a>', "leads out of the site"),
        ('<a href="/codes/">a</a>', "leads out of the site"),
        ('<a href="javascript:alert(1)">a</a>', "leads out of the site"),
        ('<a href="java&#9;script:alert(1)">a</a>', "leads out of the site"),
        ('<a href="&#x6A;avascript&colon;alert(1)">a</a>', "leads out of the site"),
        ('<a href="data:text/html,x">a</a>', "leads out of the site"),
        ('<a href="#" ping="x.html">a</a>', "attribute ping"),
        ('<img src="http://example.org/a.png">', "leads out of the site"),
        ('<img srcset="http://example.org/a.png 2x">', "leads out of the site"),
        ('<form action="http://example.org/"></form>', "leads out of the site"),
        ('<button formaction="http://example.org/">b</button>', "leads out of the site"),
        ('<table background="http://example.org/a.png"></table>', "leads out of the site"),
        ('<svg><use xlink:href="http://example.org/a.svg#b"/></svg>', "leads out of the site"),
        ('<svg><path fill="url(http://example.org/a)"/></svg>', "names an address outside the page"),
        ('<p style="background: url(http://example.org/a)">p</p>', "may not name an address"),
        (r'<p style="background: \75rl(//example.org)">p</p>', "may not name an address"),
        ("<style>p{background:url(//example.org)}</style>", "<style> is not allowed"),
        ('<base href="x/">', "<base> is not allowed"),
        ("<iframe></iframe>", "<iframe> is not allowed"),
        ("<object></object>", "<object> is not allowed"),
        ("<embed>", "<embed> is not allowed"),
        ("<video></video>", "<video> is not allowed"),
        ("<template><img src=x></template>", "<template> is not allowed"),
        ("<noscript><img src=x></noscript>", "<noscript> is not allowed"),
        ("<svg><animate attributeName=href></animate></svg>", "<animate> is not allowed"),
        ('<meta http-equiv="refresh" content="0;url=x">', "http-equiv='refresh'"),
        ('<link rel="prefetch" href="index.html">', "rel='prefetch'"),
        ('<link rel="preconnect" href="index.html">', "rel='preconnect'"),
        ("<!--><img src=x onerror=alert(1)>-->", "attribute onerror"),
        ("<title></title><textarea></textarea><img src=x onerror=alert(1)>", "attribute onerror"),
        ('<a href="gone.html">a</a>', "leads to gone.html, which is not in the site"),
        ('<a href="../index.html">a</a>', "leads to ../index.html, which is not in the site"),
        ('<a href="Index.html">a</a>', "which is not in the site"),
        ('<a href="#nowhere">a</a>', "a place 'nowhere' that index.html does not have"),
        ('<img src="gone.png">', "leads to gone.png"),
    ],
)
def test_it_is_refused_and_the_page_is_named(site, body, says):
    with pytest.raises(SealError) as raised:
        site(body)
    assert any(line.startswith("index.html: ") and says in line for line in raised.value.problems)
    assert all("\n" not in line for line in raised.value.problems)


@pytest.mark.parametrize(
    "body",
    [
        "&lt;script&gt;alert(1)&lt;/script&gt;",
        "<!-- <img src=x onerror=alert(1)> -->",
        '<img alt="url(http://example.org)" src="app.js">',
        '<script type="application/json">{"a": "http://example.org"}</script>',
        '<svg><path id="g" fill="url(#g)"/></svg>',
        '<a href="index.html?q=rail%20pressure">a</a><a href="">b</a><a href="#">c</a>',
        '<p style="width: 40%">p</p>',
    ],
)
def test_harmless_markup_passes(site, body):
    assert body in site(body)


def test_a_page_whose_head_takes_no_policy_is_refused(site):
    with pytest.raises(SealError, match="comes before the content security policy"):
        site("", head=HEAD.replace('<meta charset="utf-8">', ""))


def test_a_script_before_the_policy_is_refused(site):
    with pytest.raises(SealError, match="<script> comes before"):
        site("", head='<!doctype html><html><head><script src="app.js"></script><meta charset="utf-8"></head>')


@pytest.mark.parametrize(
    "css", ["p{background:url(http://example.org/a)}", "p{background:url('//example.org')}", '@import "a.css";']
)
def test_a_style_sheet_that_fetches_is_refused(site, css):
    (site.folder / "a.css").write_text(css)
    with pytest.raises(SealError, match=r"^a.css: "):
        site("")


def test_a_picture_that_runs_is_refused(site):
    (site.folder / "a.svg").write_text("<svg><script>alert(1)</script></svg>")
    with pytest.raises(SealError, match=r"^a.svg: unknown inline script"):
        site("")


def test_all_problems_are_told_at_once(site):
    with pytest.raises(SealError) as raised:
        site('<embed><iframe></iframe><a href="gone.html">a</a>')
    assert len(raised.value.problems) == 3
