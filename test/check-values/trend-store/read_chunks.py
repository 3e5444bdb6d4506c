"""Reads a trend store by the description in db/trends/chunk-format.ts alone. Python 3.9 or later, standard library.

    python3 read_chunks.py trend.db > samples.csv      # series,ts,integer,decimals
"""
import sqlite3, struct, sys, zlib


def varint(b, at):
    n = shift = 0
    while True:
        n |= (b[at] & 0x7F) << shift
        at += 1
        if b[at - 1] < 0x80:
            return n, at
        shift += 7


def tokens(b):
    """Yields ('d', difference) and ('gap', slots)."""
    at = 0
    while at < len(b):
        t = b[at]
        at += 1
        if t >= 0xF0:
            yield from [("d", 0)] * (t - 0xEE)
            continue
        if t >= 0xE4:
            yield "gap", t - 0xE3
            continue
        if t == 0xE3:
            n, at = varint(b, at)
            yield "gap", n
            continue
        if t == 0xE2:
            n, at = varint(b, at)
            yield from [("d", 0)] * n
            continue
        if t == 0xE1:
            z = int.from_bytes(b[at : at + 4], "little")
            at += 4
        elif t == 0xE0:
            z = int.from_bytes(b[at : at + 2], "little")
            at += 2
        elif t >= 0xC0:
            z = 192 + 256 * (t - 0xC0) + b[at]
            at += 1
        else:
            z = t
        yield "d", z // 2 if z % 2 == 0 else -(z + 1) // 2


def chunk(b):
    version, kind, decimals, flags, step, count, first, crc, number, unit, T, D, V = struct.unpack("<BBBBIIqIiIIII", b[:44])
    assert version == 1 and kind in (0, 1)
    assert crc == zlib.crc32(b[:20] + b[24:])
    times, words, values = b[44 : 44 + T], b[44 + T : 44 + T + D], b[44 + T + D : 44 + T + D + V]
    dictionary = None
    if flags & 2:
        dictionary = [struct.unpack("<i", words[:4])[0]]
        at = 4
        while at < D:
            n, at = varint(words, at)
            dictionary.append(dictionary[-1] + n)
    distances = [d + step for what, d in tokens(times)]
    rows, ts = [(first, number)], first
    for what, n in tokens(values):
        if what == "gap":
            ts += step * n
            continue
        number = (number + unit * n + 2**31) % 2**32 - 2**31
        ts += distances[len(rows) - 1] if kind == 1 else step
        rows.append((ts, number))
    assert len(rows) == count
    return decimals, [(ts, dictionary[n] if dictionary else n) for ts, n in rows]


if __name__ == "__main__":
    for id, data in sqlite3.connect(sys.argv[1]).execute("select id, data from chunk order by id"):
        decimals, rows = chunk(data)
        for ts, v in rows:
            print(id // 4096, ts, v, decimals, sep=",")
