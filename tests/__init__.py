"""Tests mirror the package; this file keeps the name `tests` from other packages."""
