"""An independent reader and writer of DICOM files for the tests (pydicom).

independent.py json FILE...     prints one line of DICOM JSON for each file, meta included
independent.py write FOLDER     writes files of many kinds
"""
import json
import sys
import warnings

import pydicom
from pydicom.dataset import Dataset, FileDataset, FileMetaDataset
from pydicom.sequence import Sequence
from pydicom.uid import ExplicitVRLittleEndian, ImplicitVRLittleEndian

warnings.simplefilter("ignore")  # about character sets that this reader lacks; the test names them

# Person names of PS3.5 annexes H, I, J and K, and one per single-byte set; from memory.
ESC = b"\x1b"
NAMES = {
    "annex-h1": ("\\ISO 2022 IR 87", b"Yamada^Tarou=\x1b$B;3ED\x1b(B^\x1b$BB@O:\x1b(B=\x1b$B$d$^$@\x1b(B^\x1b$B$?$m$&\x1b(B"),
    "annex-h2": ("ISO 2022 IR 13\\ISO 2022 IR 87", b"\xd4\xcf\xc0\xde^\xc0\xdb\xb3=\x1b$B;3ED\x1b(J^\x1b$BB@O:\x1b(J=\x1b$B$d$^$@\x1b(J^\x1b$B$?$m$&\x1b(J"),
    "annex-i": ("\\ISO 2022 IR 149", b"Hong^Gildong=\x1b$)C\xfb\xf3^\x1b$)C\xd1\xce\xd4\xd7=\x1b$)C\xc8\xab^\x1b$)C\xb1\xe6\xb5\xbf"),
    "annex-j1": ("ISO_IR 192", "Wang^XiaoDong=王^小東".encode("utf-8")),
    "annex-j2": ("GB18030", "Wang^XiaoDong=王^小东".encode("gb18030")),
    "annex-j3": ("GBK", "Wang^XiaoDong=王^小东".encode("gbk")),
    "annex-k": ("\\ISO 2022 IR 58", b"Zhang^XiaoDong=\x1b$)A\xd5\xc5^\x1b$)A\xd0\xa1\xb6\xab"),
    "x0212": ("\\ISO 2022 IR 87\\ISO 2022 IR 159", b"A=\x1b$(D\x30\x21\x1b(B^\x1b$B;3\x1b(B"),
    "latin1": ("ISO_IR 100", "Äneas^Rüdiger".encode("latin-1")),
    "latin2": ("ISO_IR 101", "Żółć^Łukasz".encode("iso8859-2")),
    "latin3": ("ISO_IR 109", "Ĝusto^Ŭ".encode("iso8859-3")),
    "latin4": ("ISO_IR 110", "Šķēle^Ģ".encode("iso8859-4")),
    "cyrillic": ("ISO_IR 144", "Иванова^Ольга".encode("iso8859-5")),
    "arabic": ("ISO_IR 127", "سعيد^ليلى".encode("iso8859-6")),
    "greek": ("ISO_IR 126", "Διονυσιος".encode("iso8859-7")),
    "hebrew": ("ISO_IR 138", "שרון^דבורה".encode("iso8859-8")),
    "latin5": ("ISO_IR 148", "Öztürk^Işık".encode("iso8859-9")),
    "latin9": ("ISO_IR 203", "Œuvre^Ž€".encode("iso8859-15")),
    "thai": ("ISO_IR 166", "ทดสอบ^ก".encode("tis-620")),
    "kana": ("ISO_IR 13", b"\xd4\xcf\xc0\xde^\xc0\xdb\xb3"),
    "mixed": ("ISO 2022 IR 100\\ISO 2022 IR 144", b"Dion\xe9^" + ESC + b"-L" + "Люк".encode("iso8859-5")),
    "ascii": ("", b"Doe^Jane"),
}


def base():
    ds = Dataset()
    ds.SOPClassUID = "1.2.840.10008.5.1.4.1.1.77.1.4"
    ds.SOPInstanceUID = "2.25.42"
    return ds


def save(ds, path, implicit=False, syntax=None):
    meta = FileMetaDataset()
    meta.MediaStorageSOPClassUID = ds.SOPClassUID
    meta.MediaStorageSOPInstanceUID = ds.SOPInstanceUID
    meta.TransferSyntaxUID = syntax or (ImplicitVRLittleEndian if implicit else ExplicitVRLittleEndian)
    meta.ImplementationClassUID = "2.25.7"
    f = FileDataset(path, ds, file_meta=meta, preamble=b"\0" * 128)
    f.is_little_endian = True
    f.is_implicit_VR = implicit
    f.save_as(path, write_like_original=False)


def wide():
    """One element of every representation that the two sides write alike, some nested."""
    ds = base()
    ds.SpecificCharacterSet = "ISO_IR 100"
    ds.ImageType = ["ORIGINAL", "PRIMARY", "", "X"]
    ds.PatientName = "Doe^Jane"
    ds.PatientAge = "034Y"
    ds.PatientBirthDate = "19920229"
    ds.StudyTime = "101530.25"
    ds.AcquisitionDateTime = "20260305090705.25+0100"
    ds.PatientComments = "one\r\ntwo \\ three"
    ds.SeriesNumber = 3
    ds.PatientWeight = "61.50"
    ds.WindowCenter = ["1.5", "-2e3"]
    ds.FrameIncrementPointer = 0x00181063
    ds.Rows = 480
    ds.PixelRepresentation = 1
    ds.SmallestImagePixelValue = -5
    ds.add_new(0x60000050, "SS", [1, -1])
    ds.ReferencePixelX0 = -7
    ds.SelectorSLValue = -70000
    ds.SelectorULValue = [1, 4000000000]
    ds.SelectorFDValue = [0.1, -2.5e-7]
    ds.SelectorFLValue = [0.5]
    ds.SelectorSVValue = -(2**62)
    ds.SelectorUVValue = 2**63 + 5
    ds.SelectorUCValue = ["first", "second"]
    ds.SelectorUTValue = "long text"
    ds.SelectorURValue = "https://example.org/a"
    ds.SelectorOFValue = b"\0\0\0\x3f"
    ds.SelectorODValue = b"\0" * 8
    ds.SelectorOLValue = b"\1\0\0\0"
    ds.ICCProfile = b"\1\2\3\4"
    item = Dataset()
    item.CodeValue = "260499007"
    item.CodingSchemeDesignator = "SCT"
    inner = Dataset()
    inner.CodeMeaning = "Übersicht"
    item.ViewModifierCodeSequence = Sequence([inner, Dataset()])
    ds.ViewCodeSequence = Sequence([item])
    ds.DeviceSequence = Sequence([])
    private = ds.private_block(0x0029, "VESTIBULE TEST", create=True)
    private.add_new(0x01, "LO", "kept")
    private.add_new(0x02, "UN", b"\1\2\3\4")
    ds.add_new(0x7FE00010, "OW", b"\1\2\3\4")
    return ds


def open_lengths(ds):
    for element in ds:
        if element.VR == "SQ":
            element.is_undefined_length = True
            for item in element.value:
                item.is_undefined_length_sequence_item = True
                open_lengths(item)


def write(folder):
    for name, (terms, raw) in NAMES.items():
        ds = base()
        if terms:
            ds.SpecificCharacterSet = terms.split("\\")
        save(ds, f"{folder}/name-{name}.dcm")
        insert_name(f"{folder}/name-{name}.dcm", raw)
    for implicit in (False, True):
        word = "implicit" if implicit else "explicit"
        save(wide(), f"{folder}/wide-{word}-defined.dcm", implicit)
        opened = wide()
        open_lengths(opened)
        save(opened, f"{folder}/wide-{word}-undefined.dcm", implicit)


def insert_name(path, raw):
    """Appends Patient's Name as raw bytes, so that no writer interprets them."""
    raw += b" " * (len(raw) % 2)
    with open(path, "ab") as f:
        f.write(b"\x10\0\x10\0PN" + len(raw).to_bytes(2, "little") + raw)


def as_json(paths):
    for path in paths:
        ds = pydicom.dcmread(path)
        meta = ds.file_meta.to_json_dict()
        meta.update(ds.to_json_dict(bulk_data_threshold=10**9))
        print(json.dumps(meta))


if sys.argv[1] == "json":
    as_json(sys.argv[2:])
else:
    write(sys.argv[2])
