"""An archive that speaks DICOMweb: Store (PS3.18 10.5) and Search (10.6), for tests.

It shares no code with Vestibule: requests are read by Python's own MIME parser, objects by pydicom.
Usage: dicomweb-peer.py FOLDER REFUSED-UID-OR-DASH
Writes its port into FOLDER/port and each object into FOLDER/<SOP Instance UID>.dcm; FOLDER/log has a
line for each arrival. An object with the refused UID is answered with failure reason C000.
"""

import email.parser
import email.policy
import io
import json
import os
import sys
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from urllib.parse import parse_qs, urlsplit

import pydicom

FOLDER, REFUSED = sys.argv[1], sys.argv[2]


def problem(part, data):
    """What is wrong with a part by the standard; empty if nothing is."""
    if part.get_content_type() != "application/dicom":
        return "part is " + part.get_content_type()
    said = part.get_param("transfer-syntax")
    if said != str(data.file_meta.TransferSyntaxUID):
        return "transfer-syntax says " + str(said)
    if data.file_meta.MediaStorageSOPInstanceUID != data.SOPInstanceUID:
        return "file meta information names another object"
    return ""


class Peer(BaseHTTPRequestHandler):
    protocol_version = "HTTP/1.1"

    def log_message(self, *words):
        pass

    def say(self, status, answer=None):
        body = b"" if answer is None else json.dumps(answer).encode()
        self.send_response(status)
        self.send_header("Content-Type", "application/dicom+json")
        self.send_header("Content-Length", str(len(body)))
        self.end_headers()
        self.wfile.write(body)

    def do_OPTIONS(self):
        self.say(200)

    def do_POST(self):
        body = self.rfile.read(int(self.headers["Content-Length"]))
        head = "Content-Type: " + self.headers["Content-Type"] + "\r\n\r\n"
        message = email.parser.BytesParser(policy=email.policy.HTTP).parsebytes(
            head.encode() + body)
        if message.get_content_type() != "multipart/related" or message.defects:
            return self.say(400)
        if message.get_param("type") != "application/dicom":
            return self.say(415)
        stored, failed = [], []
        for part in message.iter_parts():
            file = part.get_payload(decode=True)
            data = pydicom.dcmread(io.BytesIO(file))
            wrong = problem(part, data)
            uid = str(data.SOPInstanceUID)
            item = {
                "00081150": {"vr": "UI", "Value": [str(data.SOPClassUID)]},
                "00081155": {"vr": "UI", "Value": [uid]},
            }
            with open(os.path.join(FOLDER, "log"), "a") as log:
                log.write(uid + " " + str(data.Modality) + " " + wrong + "\n")
            if wrong or uid == REFUSED:
                item["00081197"] = {"vr": "US", "Value": [0xC000]}
                failed.append(item)
            else:
                with open(os.path.join(FOLDER, uid + ".dcm"), "wb") as out:
                    out.write(file)
                stored.append(item)
        answer = {}
        if stored:
            answer["00081199"] = {"vr": "SQ", "Value": stored}
        if failed:
            answer["00081198"] = {"vr": "SQ", "Value": failed}
        self.say(409 if not stored else 202 if failed else 200, answer)

    def do_GET(self):
        address = urlsplit(self.path)
        uid = parse_qs(address.query)["SOPInstanceUID"][0]
        file = os.path.join(FOLDER, uid + ".dcm")
        if not os.path.exists(file):
            return self.say(204)
        data = pydicom.dcmread(file, stop_before_pixels=True)
        parts = address.path.split("/")
        if "studies" in parts and parts[parts.index("studies") + 1] != data.StudyInstanceUID:
            return self.say(204)
        keep = ("SOPClassUID", "SOPInstanceUID", "StudyInstanceUID", "SeriesInstanceUID", "PatientID")
        match = pydicom.Dataset()
        for name in keep:
            setattr(match, name, data.get(name, ""))
        self.say(200, [match.to_json_dict()])


server = ThreadingHTTPServer(("127.0.0.1", 0), Peer)
with open(os.path.join(FOLDER, "port.part"), "w") as out:
    out.write(str(server.server_address[1]))
os.rename(os.path.join(FOLDER, "port.part"), os.path.join(FOLDER, "port"))
server.serve_forever()
