"""A page from outside is opened in a real browser: nothing in it runs, nothing is fetched."""

from __future__ import annotations

import os
import re
import shutil
import subprocess
from collections.abc import Iterator
from contextlib import contextmanager
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from threading import Thread

import pytest

from drills.digest.incoming import page_in

HOSTILE = """<!DOCTYPE html><html><head><title>quiet</title>
<script>document.title = "ran"</script><link rel="stylesheet" href="URL/style"></head>
<body onload="document.title = 'ran'"><img src="URL/picture"><iframe src="URL/frame"></iframe>
<svg onload="document.title = 'ran'"></svg></body></html>"""


@contextmanager
def listening() -> Iterator[tuple[str, list[str]]]:
    """An address, and what was asked for there."""
    asked: list[str] = []

    class Handler(BaseHTTPRequestHandler):
        def do_GET(self) -> None:
            asked.append(self.path)
            self.send_response(204)
            self.end_headers()

        def log_message(self, *_: object) -> None:
            pass

    server = ThreadingHTTPServer(("127.0.0.1", 0), Handler)
    thread = Thread(target=server.serve_forever)
    thread.start()
    try:
        yield f"http://127.0.0.1:{server.server_port}", asked
    finally:
        server.shutdown()
        thread.join()
        server.server_close()


def opened(page: str, folder: Path) -> tuple[str, list[str]]:
    """The title that the page ends with, and what it fetched."""
    names = [os.environ.get("DRILLS_CHROMIUM", ""), "chromium", "chromium-browser", "google-chrome"]
    browser = next((found for name in names if name and (found := shutil.which(name))), None)
    if browser is None:
        pytest.skip("no Chromium on this machine: install it, or name it in DRILLS_CHROMIUM")
    with listening() as (address, asked):
        file = folder / "page.html"
        file.write_text(page.replace("URL", address), encoding="utf-8")
        flags = ["--headless", "--no-sandbox", "--disable-gpu", f"--user-data-dir={folder / 'b'}"]
        done = subprocess.run(
            [browser, *flags, "--dump-dom", file.as_uri()],
            capture_output=True,
            text=True,
            check=True,
            timeout=120,
        )
    (title,) = re.findall(r"<title>(\w+)</title>", done.stdout)
    return title, asked


def test_nothing_in_a_page_from_outside_runs_or_is_fetched(tmp_path: Path) -> None:
    assert opened(page_in(HOSTILE.encode(), "F"), tmp_path) == ("quiet", [])


def test_the_same_page_without_the_guard_runs_and_fetches(tmp_path: Path) -> None:
    title, asked = opened(HOSTILE, tmp_path)
    assert title == "ran"
    assert {"/style", "/picture", "/frame"} <= set(asked)
