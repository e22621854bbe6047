"""Reads DICOM files with independent implementations and compares what they say.

objects.py FOLDER ACCEPTED...
"""
import os
import re
import subprocess
import sys
import tempfile

import pydicom
from pydicom.encaps import generate_pixel_data_fragment
from pydicom.filebase import DicomBytesIO

PREFIX_AT = 128

NOTE = "1.2.840.10008.5.1.4.1.1.88.59"
PHOTOGRAPH = "VLPhotographicImage"
KEY_OBJECT = "KeyObjectSelectionDocument"

# What dsrdump says of itself, not of the file.
DSRDUMP_LIMITS = {
    "W: The VR checker does not support this Specific Character Set: ISO_IR 192",
    "W: Check for template constraints not yet supported",
}

# Groups that exiftool fills from the frame header and the file system alone.
STRUCTURE = {"SourceFile", "ExifTool", "System", "File", "Composite"}


def accepted_warnings(path):
    with open(path, encoding="utf-8") as lines:
        pairs = [line.rstrip("\n").split("\t") for line in lines if not line.startswith("#")]
    return [(re.compile(pattern), reason) for pattern, reason in pairs]


def dicom_files(folder):
    for root, folders, names in os.walk(folder):
        folders.sort()
        for name in sorted(names):
            path = os.path.join(root, name)
            with open(path, "rb") as file:
                head = file.read(PREFIX_AT + 4)
            if head[PREFIX_AT:] == b"DICM":
                yield path
            elif name.lower().endswith(".dcm"):
                yield path  # named as one, so it has to be one


def run(*command):
    done = subprocess.run(command, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, check=False)
    return done.returncode, done.stdout.decode("utf-8", "replace").splitlines()


def is_note(path):
    return pydicom.dcmread(path, stop_before_pixels=True).SOPClassUID == NOTE


def validated(path, accepted, seen, kind):
    code, lines = run("dciodvfy", path)
    faults = []
    if code != 0:
        faults.append(f"dciodvfy ended with {code}")
    if not any(line == kind for line in lines):
        faults.append(f"dciodvfy doesn't take it for a {kind}")
    for line in lines:
        if line in ("", kind):
            continue
        reasons = [reason for pattern, reason in accepted if pattern.fullmatch(line)]
        if reasons:
            seen[line] = reasons[0]
        else:
            faults.append("dciodvfy: " + line)
    return faults


def dumped(path):
    code, lines = run("dcmdump", "-q", "+fo", "+P", "SOPInstanceUID", path)
    faults = [] if code == 0 else [f"dcmdump ended with {code}"]
    _, verbose = run("dcmdump", path)
    faults += ["dcmdump: " + line for line in verbose if line.startswith(("E:", "W:", "F:"))]
    uids = [re.sub(r".*\[(.*)\].*", r"\1", line) for line in lines if "SOPInstanceUID" in line]
    return faults, uids


def codes(data):
    """Every code item of a data set, at any depth."""
    for element in data:
        if element.VR == "SQ":
            for item in element.value:
                if "CodeMeaning" in item:
                    yield element, item
                yield from codes(item)


def own_codes(data):
    """A private code is of a scheme that the object identifies, and says where it extends a group."""
    faults = []
    schemes = {item.CodingSchemeDesignator for item in data.get("CodingSchemeIdentificationSequence", [])}
    views = 0
    for sequence, item in codes(data):
        own = item.CodingSchemeDesignator.startswith("99")
        inside_view = sequence.keyword in ("ViewCodeSequence", "ViewModifierCodeSequence")
        views += own and inside_view
        if own and item.CodingSchemeDesignator not in schemes:
            faults.append("a private code of a scheme that the object doesn't identify")
        if (item.get("ContextGroupExtensionFlag", "N") == "Y") != (own and inside_view):
            faults.append(f"{sequence.keyword}: a code that is private or an extension, but not both")
        if ("LongCodeValue" in item) != (len(item.get("CodeValue", item.get("LongCodeValue"))) > 16):
            faults.append(f"{sequence.keyword}: a code value in the wrong one of the two attributes")
    if not views:
        faults.append("no code says which view of the catalogue it is")
    return faults


def parsed(path, uids):
    faults = []
    data = pydicom.dcmread(path)
    elements = sum(1 for _ in data.iterall())
    if elements < 20:
        faults.append(f"pydicom reads only {elements} elements")
    if data.SOPInstanceUID not in uids:
        faults.append("pydicom and dcmdump read different SOP Instance UIDs")
    if data.file_meta.MediaStorageSOPInstanceUID != data.SOPInstanceUID:
        faults.append("the file header names another instance than the data set")
    if any(byte for byte in data.preamble):
        faults.append("the preamble isn't zero")
    if any(element.tag.is_private for element in data.iterall()):
        faults.append("there are private elements")
    faults += own_codes(data)
    stream = DicomBytesIO(data.PixelData)
    stream.is_little_endian = True
    parts = list(generate_pixel_data_fragment(stream))[1:]  # the first is the offset table
    if len(parts) != 1:
        faults.append(f"the picture has {len(parts)} fragments")
    elif not parts[0].rstrip(b"\0").endswith(b"\xff\xd9"):
        faults.append("the picture doesn't end with EOI")
    else:
        faults += bare(parts[0])
    return faults


def note(path, uids):
    """A rejection note selects nothing but what it declares; dsrdump reads its tree."""
    faults = []
    data = pydicom.dcmread(path)
    if data.SOPInstanceUID not in uids:
        faults.append("pydicom and dcmdump read different SOP Instance UIDs")
    evidence = {
        object.ReferencedSOPInstanceUID
        for study in data.CurrentRequestedProcedureEvidenceSequence
        for series in study.ReferencedSeriesSequence
        for object in series.ReferencedSOPSequence
    }
    selected = {
        item.ReferencedSOPSequence[0].ReferencedSOPInstanceUID
        for item in data.ContentSequence
        if item.ValueType == "IMAGE"
    }
    if not selected or selected != evidence:
        faults.append("content and evidence of the note name different objects")
    code, lines = run("dsrdump", path)
    if code != 0:
        faults.append(f"dsrdump ended with {code}")
    faults += [
        "dsrdump: " + line
        for line in lines
        if line.startswith(("E:", "W:", "F:")) and line not in DSRDUMP_LIMITS
    ]
    return faults


def bare(picture):
    """What exiftool finds in a codestream beyond the image's own structure."""
    with tempfile.NamedTemporaryFile(suffix=".jpg") as file:
        file.write(picture)
        file.flush()
        _, lines = run("exiftool", "-G1", "-s", "-j", file.name)
    groups = {line.split(":")[0].strip(' "') for line in lines if ":" in line and '"' in line}
    return [f"exiftool finds {group} in the picture" for group in sorted(groups - STRUCTURE)]


def main(folder, accepted_paths):
    accepted = [pair for path in accepted_paths for pair in accepted_warnings(path)]
    seen = {}
    failed = 0
    checked = 0
    for path in dicom_files(folder):
        checked += 1
        more, uids = dumped(path)
        try:
            noted = is_note(path)
            faults = validated(path, accepted, seen, KEY_OBJECT if noted else PHOTOGRAPH) + more
            faults += note(path, uids) if noted else parsed(path, uids)
        except Exception as error:  # whatever stops an independent reader is a finding
            faults = more + [f"pydicom: {type(error).__name__}: {error}"]
        for fault in faults:
            print(f"{os.path.relpath(path, folder)}: {fault}")
        failed += bool(faults)
    for line, reason in seen.items():
        print(f"accepted: {line.strip()}\n          {reason}")
    print(f"{checked} objects read by dciodvfy, dcmdump, pydicom and exiftool; {failed} with faults")
    if checked == 0:
        print("no DICOM file was found: there is nothing to be satisfied with")
    return 0 if checked and not failed else 1


if __name__ == "__main__":
    sys.exit(main(sys.argv[1], sys.argv[2:]))
