"""Reads one data frame from an R data file (.rda, XDR serialisation version 2 or 3).

Only what data frames of numbers, texts and factors need; anything else ends with an error. The format
is described in "R Internals", section Serialization Formats.
"""
import bz2
import gzip
import lzma
import struct

MISSING_INTEGER = -(2 ** 31)


def unpacked(data):
    for magic, opener in ((b"\x1f\x8b", gzip.decompress), (b"BZh", bz2.decompress), (b"\xfd7zXZ", lzma.decompress)):
        if data.startswith(magic):
            return opener(data)
    return data


class Reader:
    def __init__(self, data):
        self.data, self.at, self.seen = data, 0, []

    def take(self, count):
        self.at += count
        return self.data[self.at - count:self.at]

    def integer(self):
        return struct.unpack(">i", self.take(4))[0]

    def header(self):
        if self.take(5) not in (b"RDX2\n", b"RDX3\n") or self.take(2) != b"X\n":
            raise ValueError("not an XDR file of version 2 or 3")
        version = self.integer()
        self.take(8)
        if version == 3:
            self.take(self.integer())

    def item(self):
        flags = self.integer()
        kind, with_attributes, with_tag = flags & 255, bool(flags & 512), bool(flags & 1024)
        if kind in (254, 242, 241, 253):  # NULL, empty and base environments, global environment
            return None
        if kind == 255:  # a symbol seen before
            return self.seen[(flags >> 8) - 1]
        if kind == 1:  # symbol
            name = self.item()
            self.seen.append(name)
            return name
        if kind == 9:  # one text
            length = self.integer()
            return None if length == -1 else self.take(length).decode("utf-8", "replace")
        if kind == 2:  # pair list
            return self.pairs(flags)
        value = self.vector(kind)
        attributes = dict(self.item() or []) if with_attributes else {}
        if "levels" in attributes:
            value = [None if code is None else attributes["levels"][code - 1] for code in value]
        if "names" in attributes and kind == 19:
            return dict(zip(attributes["names"], value))
        return value

    def pairs(self, flags):
        found = []
        while flags & 255 == 2:
            if flags & 512:
                self.item()
            tag = self.item() if flags & 1024 else None
            found.append((tag, self.item()))
            flags = self.integer()
        return found

    def vector(self, kind):
        length = self.integer()
        if kind in (10, 13):  # logical, integer
            values = struct.unpack(">%di" % length, self.take(4 * length))
            return [None if value == MISSING_INTEGER else value for value in values]
        if kind == 14:  # double; every NaN counts as missing
            values = struct.unpack(">%dd" % length, self.take(8 * length))
            return [None if value != value else value for value in values]
        if kind in (16, 19):  # texts, list
            return [self.item() for _ in range(length)]
        raise ValueError("this reader knows no R values of type %d" % kind)


def data_frame(path, name):
    """The columns of the data frame `name`, as lists; a missing cell is None."""
    with open(path, "rb") as file:
        reader = Reader(unpacked(file.read()))
    reader.header()
    frame = dict(reader.item())[name]
    if not isinstance(frame, dict):
        raise ValueError(path + ": " + name + " is no data frame")
    return frame
