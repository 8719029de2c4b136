import type { RequestName } from '../../shared/contract.ts'
import { changeSettings, removeSample, summariseBook } from './book.ts'
import type { Handler } from './context.ts'
import { takeHandedJob } from './handedJob.ts'
import {
  backUp,
  chooseFolder,
  copyNow,
  freshBook,
  goOverPapers,
  insideCopy,
  keepingInHand,
  openAgain,
  putOffReminder,
  putOutcomeAway,
  putPaperBack,
  restoreCopy,
  salvageBook,
  stateOfKeeping,
  stopKeeping,
} from './keeping.ts'
import { changeJob, createJob, findCustomers, openJob, repeatJob } from './jobs.ts'
import { findPieces, listJobs, listYears, readBoard, readYear } from './jobBook.ts'
import { cancelOrder, cutOrder, listOrders, openOrder, placeOrder, receiveOrder } from './orders.ts'
import { printDayList, printOrder } from './benchPapers.ts'
import { bringJobIn, lookIntoJob, takeJobOut } from './jobFile.ts'
import { bookWorkInHand, bringBookIn, lookIntoFolder, stopBookWork, takeBookOut } from './openBook.ts'
import { addNote, listHappened, listNotes, mendNote, putNoteAway } from './notes.ts'
import {
  addPhotograph,
  describePhotograph,
  listPhotographs,
  putPhotographAway,
  readPhotograph,
} from './photographs.ts'
import { comparePapers, draftCard, issueCard, listPapers, printSheet, readPaper } from './papers.ts'
import { gatherCards, issueCards, makeDueCard } from './batchCards.ts'
import { listDueCards } from './dueCards.ts'
import { offerLanguages, readLanguage } from './languages.ts'
import { partOfPaper, printPaper } from './printing.ts'
import {
  addItem,
  addSupplier,
  changeItem,
  changeSupplier,
  keepSupply,
  priceBook,
  priceLines,
  retireItem,
  somePrices,
} from './prices.ts'
import { addToRack, changeRackPiece, countRack, listRack, takeFromRack } from './rack.ts'
import { applyRise, listRises, previewRise, undoRise } from './rises.ts'
import { listOptions, addOption, changeOption, removeOption } from './options.ts'
import {
  draftQuotation,
  issueQuotation,
  quotationMoney,
  acceptQuotation,
  requoteQuotation,
} from './quotations.ts'
import { orderCandidates, timberTask } from './timberTask.ts'
import { listWorkDone, addWorkDone, removeWorkDone, workRecord } from './workDone.ts'
import { doAgain, feelPulse, listDeeds, takeBack } from './undo.ts'
import { addUsualGate, gateOfPaper, listUsualGates, removeUsualGate, renameUsualGate } from './usualGates.ts'
import { uncoveredWords } from './uncovered.ts'
import { addSection, changeSection, listSections, removeSection } from './sections.ts'

/** Each request of the contract with the one function that answers it. A request without one doesn't compile. */
export const handlers: { readonly [N in RequestName]: Handler<N> } = {
  'book.summary': summariseBook,
  'jobs.list': listJobs,
  'jobs.pieces': findPieces,
  'jobs.board': readBoard,
  'jobs.year': readYear,
  'jobs.years': listYears,
  'jobs.open': openJob,
  'jobs.create': createJob,
  'jobs.change': changeJob,
  'jobs.repeat': repeatJob,
  'customers.find': findCustomers,
  'papers.list': listPapers,
  'papers.issue': issueCard,
  'papers.bytes': readPaper,
  'papers.draft': draftCard,
  'papers.sheet': printSheet,
  'papers.compare': comparePapers,
  'settings.change': changeSettings,
  'sections.list': listSections,
  'sections.add': addSection,
  'sections.change': changeSection,
  'sections.remove': removeSection,
  'sample.remove': removeSample,
  'prices.book': priceBook,
  'prices.lines': priceLines,
  'prices.some': somePrices,
  'prices.addItem': addItem,
  'prices.changeItem': changeItem,
  'prices.retireItem': retireItem,
  'prices.addSupplier': addSupplier,
  'prices.changeSupplier': changeSupplier,
  'prices.supply': keepSupply,
  'prices.preview': previewRise,
  'prices.apply': applyRise,
  'prices.rises': listRises,
  'prices.undo': undoRise,
  'options.list': listOptions,
  'options.add': addOption,
  'options.change': changeOption,
  'options.remove': removeOption,
  'quotations.draft': draftQuotation,
  'quotations.issue': issueQuotation,
  'quotations.money': quotationMoney,
  'quotations.accept': acceptQuotation,
  'quotations.requote': requoteQuotation,
  'workDone.list': listWorkDone,
  'workDone.add': addWorkDone,
  'workDone.remove': removeWorkDone,
  'workDone.record': workRecord,
  'orders.candidates': orderCandidates,
  'orders.task': timberTask,
  'orders.place': placeOrder,
  'orders.list': listOrders,
  'orders.open': openOrder,
  'orders.receive': receiveOrder,
  'orders.cut': cutOrder,
  'orders.cancel': cancelOrder,
  'rack.list': listRack,
  'rack.add': addToRack,
  'rack.change': changeRackPiece,
  'rack.take': takeFromRack,
  'rack.count': countRack,
  'papers.dayList': printDayList,
  'papers.order': printOrder,
  'papers.uncovered': uncoveredWords,
  'papers.part': partOfPaper,
  'papers.print': printPaper,
  'papers.due': listDueCards,
  'papers.dueCard': makeDueCard,
  'papers.gather': gatherCards,
  'papers.issueTogether': issueCards,
  'job.handed': takeHandedJob,
  'book.takeOut': takeBookOut,
  'book.lookInto': lookIntoFolder,
  'book.bringIn': bringBookIn,
  'book.inHand': bookWorkInHand,
  'book.stopWork': stopBookWork,
  'job.takeOut': takeJobOut,
  'job.lookInto': lookIntoJob,
  'job.bringIn': bringJobIn,
  'keeping.state': stateOfKeeping,
  'keeping.inside': insideCopy,
  'keeping.copy': copyNow,
  'keeping.restore': restoreCopy,
  'keeping.salvage': salvageBook,
  'keeping.fresh': freshBook,
  'keeping.again': openAgain,
  'keeping.chooseFolder': chooseFolder,
  'keeping.backUp': backUp,
  'keeping.putOff': putOffReminder,
  'keeping.putAway': putOutcomeAway,
  'keeping.goOver': goOverPapers,
  'keeping.inHand': keepingInHand,
  'keeping.stopWork': stopKeeping,
  'keeping.putBack': putPaperBack,
  'undo.list': listDeeds,
  'undo.back': takeBack,
  'undo.again': doAgain,
  'book.pulse': feelPulse,
  'usual.list': listUsualGates,
  'usual.add': addUsualGate,
  'usual.rename': renameUsualGate,
  'usual.remove': removeUsualGate,
  'papers.gate': gateOfPaper,
  'notes.list': listNotes,
  'notes.add': addNote,
  'notes.mend': mendNote,
  'notes.putAway': putNoteAway,
  'photographs.list': listPhotographs,
  'photographs.add': addPhotograph,
  'photographs.bytes': readPhotograph,
  'photographs.describe': describePhotograph,
  'photographs.putAway': putPhotographAway,
  'happened.list': listHappened,
  'language.offered': offerLanguages,
  'language.read': readLanguage,
}
