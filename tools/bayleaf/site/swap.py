"""Put a finished folder in the place of the old one, so that whoever looks finds the old or the new one whole.

The new folder is made beside the old one (`.site.new-4711`), written through to the disk and exchanged with it in one
system call, renameat2 with RENAME_EXCHANGE (Linux man-pages, rename(2)). Where that call is missing the two renames
leave a moment without a site; `mend`, called at the start of every build, puts back or clears away whatever a killed
build left behind.
"""

from __future__ import annotations

import ctypes
import errno
import os
import shutil
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from bayleaf.site.errors import SiteError

MARKER = ".bayleaf-site"
MARKER_TEXT = "This folder is written by bayleaf {} and replaced whole by the next one.\n"
AT_FDCWD, RENAME_EXCHANGE = -100, 2


@contextmanager
def staged(out: Path, command: str = "build") -> Iterator[Path]:
    """A new empty folder beside `out`; when the block ends without an error it takes the place of `out`, whole.

    Raises SiteError when `out` holds what another command or somebody else wrote, or another build is at work on it.
    On any error `out` stays as it was.
    """
    out = Path(os.path.abspath(out))
    out.parent.mkdir(parents=True, exist_ok=True)
    with locked(out.parent / f".{out.name}.lock"):
        mend(out)
        _refuse_foreign(out, command)
        new = out.parent / f".{out.name}.new-{os.getpid()}"
        new.mkdir()
        try:
            yield new
            (new / MARKER).write_text(MARKER_TEXT.format(command), encoding="utf-8")
            _sync(new)
            _exchange(new, out)
            _through(out.parent)
        finally:
            shutil.rmtree(new, ignore_errors=True)


@contextmanager
def locked(path: Path) -> Iterator[None]:
    """Hold a lock file; the system lets go of it when the process ends, however it ends. Raises SiteError when held."""
    with path.open("a") as handle:
        try:
            _lock(handle.fileno())
        except OSError:
            raise SiteError(f"could not run: another build is at work ({path}); wait for it to end") from None
        yield


def mend(out: Path) -> None:
    """Put right what a killed build left: the old folder goes back where none stands, other leftovers are removed."""
    for old in sorted(out.parent.glob(f".{out.name}.old-*")):
        if out.exists() or not (old / MARKER).exists():
            shutil.rmtree(old, ignore_errors=True)
        else:
            old.rename(out)
    for new in out.parent.glob(f".{out.name}.new-*"):
        shutil.rmtree(new, ignore_errors=True)


def _refuse_foreign(out: Path, command: str) -> None:
    if out.is_symlink():
        raise SiteError(f"could not run: {out} is a link; give the folder itself with --out")
    if out.exists() and not out.is_dir():
        raise SiteError(f"could not run: {out} is a file; give a folder with --out")
    marker = out / MARKER
    ours = marker.is_file() and marker.read_text(encoding="utf-8", errors="replace") == MARKER_TEXT.format(command)
    if out.exists() and any(out.iterdir()) and not ours:
        raise SiteError(
            f"could not run: {out} holds files that bayleaf {command} did not write; "
            "give an empty or new folder with --out"
        )


def _sync(folder: Path) -> None:
    """Write every file and folder through to the disk, so that the promise holds when the power goes too."""
    for top, _, names in os.walk(folder):
        for name in names:
            _through(Path(top, name))
        _through(Path(top))


def _through(path: Path) -> None:
    if os.name != "posix":  # Windows writes through only what is open for writing, and opens no folder
        return
    handle = os.open(path, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)


def _exchange(new: Path, out: Path) -> None:
    """`new` and `out` change places; where `out` does not stand yet, `new` is renamed to it."""
    if not out.exists():
        new.rename(out)
        return
    try:
        _rename_exchange(new, out)
    except OSError as error:
        if error.errno not in (errno.ENOSYS, errno.EINVAL, errno.ENOTSUP):
            raise SiteError(f"could not run: {out} cannot be replaced: {error.strerror}") from None
        _two_renames(new, out)


def _rename_exchange(new: Path, out: Path) -> None:
    libc = ctypes.CDLL(None, use_errno=True) if os.name == "posix" else None
    if libc is None or not hasattr(libc, "renameat2"):
        raise OSError(errno.ENOSYS, "no renameat2 on this system")
    if libc.renameat2(AT_FDCWD, os.fsencode(new), AT_FDCWD, os.fsencode(out), RENAME_EXCHANGE) != 0:
        number = ctypes.get_errno()
        raise OSError(number, os.strerror(number))


def _two_renames(new: Path, out: Path) -> None:
    old = out.parent / f".{out.name}.old-{os.getpid()}"
    try:
        out.rename(old)
        new.rename(out)
    except OSError as error:
        if not out.exists() and old.exists():
            old.rename(out)
        raise SiteError(f"could not run: {out} cannot be replaced: {error.strerror}; close what uses it") from None
    shutil.rmtree(old, ignore_errors=True)


def _lock(handle: int) -> None:
    if sys.platform != "win32":
        import fcntl

        fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
    else:
        import msvcrt

        msvcrt.locking(handle, msvcrt.LK_NBLCK, 1)
