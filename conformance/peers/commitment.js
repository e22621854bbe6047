// An archive that keeps in memory which objects it was sent and does storage commitment, built on
// dcmjs-dimse. Usage: node commitment.js PORT MODE REPORT_PORT
// MODE same: reports on the association of the request; later: on one of its own, to REPORT_PORT;
// silent: never; refuses: will not do storage commitment; losing: same, but forgets every third object.
'use strict';
const dimse = require('dcmjs-dimse');
const { Server, Scp, Client, Dataset } = dimse;
const { CEchoResponse, CFindResponse, CStoreResponse, NActionResponse } = dimse.responses;
const { NEventReportRequest } = dimse.requests;
const { Status, PresentationContextResult } = dimse.constants;

const PUSH_MODEL = '1.2.840.10008.1.20.1';
const PUSH_INSTANCE = '1.2.840.10008.1.20.1.1';
const NO_SUCH_INSTANCE = 0x0112;

const [port, mode, reportPort] = process.argv.slice(2);
const stored = new Map();
let count = 0;

function items(dataset, keyword) {
  const value = dataset.getElement(keyword);
  return value === undefined ? [] : Array.isArray(value) ? value : [value];
}

function report(action) {
  const asked = items(action, 'ReferencedSOPSequence');
  const kept = asked.filter((i) => stored.get(i.ReferencedSOPInstanceUID) === i.ReferencedSOPClassUID);
  const lost = asked.filter((i) => !kept.includes(i));
  const elements = { TransactionUID: action.getElement('TransactionUID'), RetrieveAETitle: 'ARCHIVE' };
  const named = (i) => ({
    ReferencedSOPClassUID: i.ReferencedSOPClassUID,
    ReferencedSOPInstanceUID: i.ReferencedSOPInstanceUID,
  });
  if (kept.length > 0) {
    elements.ReferencedSOPSequence = kept.map(named);
  }
  if (lost.length > 0) {
    elements.FailedSOPSequence = lost.map((i) => ({ ...named(i), FailureReason: NO_SUCH_INSTANCE }));
  }
  const request = new NEventReportRequest(PUSH_MODEL, PUSH_INSTANCE, lost.length > 0 ? 2 : 1);
  request.setDataset(new Dataset(elements));
  request.on('response', (r) => console.log('REPORTED ' + r.getStatus().toString(16)));
  return request;
}

class Archive extends Scp {
  associationRequested(association) {
    association.getPresentationContexts().forEach((c) => {
      const context = association.getPresentationContext(c.id);
      const refused = mode === 'refuses' && context.getAbstractSyntaxUid() === PUSH_MODEL;
      context.setResult(
        refused
          ? PresentationContextResult.RejectAbstractSyntaxNotSupported
          : PresentationContextResult.Accept,
        context.getTransferSyntaxUids()[0]
      );
    });
    this.sendAssociationAccept();
  }

  cEchoRequest(request, callback) {
    const response = CEchoResponse.fromRequest(request);
    response.setStatus(Status.Success);
    callback(response);
  }

  cStoreRequest(request, callback) {
    const dataset = request.getDataset();
    const uid = request.getAffectedSopInstanceUid();
    if (dataset.getElement('SOPInstanceUID') !== uid) {
      console.log('WRONG OBJECT');
    }
    count += 1;
    if (mode !== 'losing' || count % 3 !== 0) {
      stored.set(uid, request.getAffectedSopClassUid());
    }
    console.log('STORED ' + uid);
    const response = CStoreResponse.fromRequest(request);
    response.setStatus(Status.Success);
    callback(response);
  }

  // Shows objects by the list of their UIDs; of studies it says nothing.
  cFindRequest(request, callback) {
    const question = request.getDataset();
    const answers = [];
    if (question.getElement('QueryRetrieveLevel') === 'IMAGE') {
      items(question, 'SOPInstanceUID')
        .flatMap((uids) => uids.split('\\'))
        .filter((uid) => stored.has(uid))
        .forEach((uid) => {
          const answer = CFindResponse.fromRequest(request);
          answer.setDataset(
            new Dataset({
              QueryRetrieveLevel: 'IMAGE',
              StudyInstanceUID: question.getElement('StudyInstanceUID'),
              SeriesInstanceUID: question.getElement('SeriesInstanceUID'),
              SOPInstanceUID: uid,
            })
          );
          answer.setStatus(Status.Pending);
          answers.push(answer);
        });
    }
    const last = CFindResponse.fromRequest(request);
    last.setStatus(Status.Success);
    answers.push(last);
    callback(answers);
  }

  nActionRequest(request, callback) {
    const action = request.getDataset();
    console.log('ASKED ' + items(action, 'ReferencedSOPSequence').length);
    const response = NActionResponse.fromRequest(request);
    response.setStatus(Status.Success);
    callback(response);
    if (mode === 'same' || mode === 'losing') {
      setTimeout(() => this.sendRequests(report(action)), 100);
    } else if (mode === 'later') {
      const client = new Client();
      client.on('networkError', (e) => console.log('ERROR ' + e.message));
      client.on('associationRejected', () => console.log('REJECTED'));
      client.addRequest(report(action));
      setTimeout(() => client.send('127.0.0.1', Number(reportPort), 'ARCHIVE', 'VESTIBULE'), 1500);
    }
  }

  associationReleaseRequested() {
    this.sendAssociationReleaseResponse();
  }
}

dimse.log.setLevel('error');
const server = new Server(Archive);
server.on('networkError', (e) => console.log('ERROR ' + e.message));
server.listen(Number(port));
console.log('LISTENING');
