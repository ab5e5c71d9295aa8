"""What is often worked out wrong, the right figure beside it, and how each is worked out."""

from benchsheaf.pages.handbook.cautions import PLUG_OUT, TRAINED
from benchsheaf.pages.handbook.errors_decoding import decoding_errors, firmware_errors, picture_errors
from benchsheaf.pages.handbook.errors_disks import byte_errors, disk_errors
from benchsheaf.pages.handbook.errors_memory import memory_errors
from benchsheaf.pages.handbook.errors_power import bead_errors, mains_errors, power_errors
from benchsheaf.pages.handbook.errors_volumes import volume_errors
from benchsheaf.pages.handbook.shape import Content, Section


def errors() -> Content:
    """Every error under its subject; those that can hurt come first."""
    return Content(
        cautions=(PLUG_OUT, TRAINED),
        long=True,
        answer="Each has the wrong figure, the right one, and how it is worked out. The examples are general; what a "
        "machine's own sheet says wins.",
        sections=(
            Section(anchor="mains", title="Mains and reservoirs", points=mains_errors()),
            Section(anchor="loads", title="Loads and supplies", points=power_errors()),
            Section(anchor="beads", title="Beads and shorts", points=bead_errors()),
            Section(anchor="bytes", title="Bytes and disks", points=byte_errors()),
            Section(anchor="tracks", title="Tracks and sectors", points=disk_errors()),
            Section(anchor="volumes", title="Volumes and clusters", points=volume_errors()),
            Section(anchor="memory", title="Memory", points=memory_errors()),
            Section(anchor="firmware", title="Firmware and checksums", points=firmware_errors()),
            Section(anchor="clocks", title="Clocks and picture", points=picture_errors()),
            Section(anchor="decoding", title="Addresses and markings", points=decoding_errors()),
        ),
    )
