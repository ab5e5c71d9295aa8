"""The cyclic checks of the trade by their parameters, since a width alone names none."""

from dataclasses import dataclass


@dataclass(frozen=True, kw_only=True, slots=True)
class Crc:
    """A cyclic check: its polynomial without the leading one, where it starts, which bit goes first, what is done last.

    `reflected` means that the lowest bit of each byte goes first.
    """

    name: str
    width: int
    polynomial: int
    start: int
    reflected: bool = False
    final_xor: int = 0
    source: str = ""

    def steps(self) -> tuple[int, ...]:
        """What each value of a byte adds."""
        return tuple(self._reflected(value) if self.reflected else self._straight(value) for value in range(256))

    def _straight(self, value: int) -> int:
        register = value << (self.width - 8)
        for _ in range(8):
            top = register >> (self.width - 1)
            register = (register << 1) & (2**self.width - 1) ^ (self.polynomial if top else 0)
        return register

    def _reflected(self, value: int) -> int:
        mirrored = int(f"{self.polynomial:0{self.width}b}"[::-1], 2)
        for _ in range(8):
            value = value >> 1 ^ (mirrored if value & 1 else 0)
        return value


CRC_32 = Crc(
    name="CRC-32", width=32, polynomial=0x04C11DB7, start=0xFFFFFFFF, reflected=True, final_xor=0xFFFFFFFF,
    source="IEEE 802.3",
)  # fmt: skip
DISK_CRC = Crc(name="CRC-16 of disks", width=16, polynomial=0x1021, start=0xFFFF, source="ITU-T V.41, polynomial")
ZERO_CRC = Crc(name="CRC-16 from zero", width=16, polynomial=0x1021, start=0x0000, source="ITU-T V.41")
MIRRORED_CRC = Crc(
    name="CRC-16 mirrored", width=16, polynomial=0x8005, start=0x0000, reflected=True, source="common practice"
)
SHORT_CRC = Crc(name="CRC-8", width=8, polynomial=0x07, start=0x00, source="common practice")
CRCS = (CRC_32, DISK_CRC, ZERO_CRC, MIRRORED_CRC, SHORT_CRC)
