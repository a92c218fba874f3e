"""What goes into a sealed file: the numbers, with the page to read among them."""

from __future__ import annotations

import json

from drills.digest.as_json import as_json
from drills.digest.incoming import PAGE
from drills.digest.values import Digest


def sealed_content(digest: Digest, page: str) -> bytes:
    """The digest's JSON with its page as one more field, last."""
    value = {**as_json(digest), PAGE: page}
    # Indented, as `read_fields` wants it.
    text = json.dumps(value, ensure_ascii=False, allow_nan=False, indent=1)
    return text.encode("utf-8", "backslashreplace")
