/** Every service by the name of its procedure: the compiler holds this table against the contract, both ways. */

import { backup, backups, check, keepBackup, saveCopy, tidy } from './catalogue.ts'
import { climateServices } from './climate/climate.ts'
import { computations } from './computations.ts'
import { crewServices } from './crew/crew.ts'
import { lifting } from './crew/plan.ts'
import { drawingServices } from './drawing/drawing.ts'
import * as entries from './exhibitions/entries.ts'
import * as exhibitions from './exhibitions/exhibitions.ts'
import {
  changes as editChanges,
  explain as editExplain,
  history as editHistory,
  list as editList,
  state as editState,
} from './history/history.ts'
import { importServices } from './import/import.ts'
import { insuredServices } from './insured/insured.ts'
import { labelServices } from './labels.ts'
import * as lightHours from './light/hours.ts'
import { ledger, list as lightList } from './light/ledger.ts'
import * as lightReadings from './light/readings.ts'
import { loanServices } from './loans/loans.ts'
import * as late from './marks/late.ts'
import * as locks from './marks/locks.ts'
import * as marks from './marks/marks.ts'
import { partyServices } from './parties.ts'
import { peopleServices } from './people.ts'
import * as planRead from './plan/get.ts'
import * as planPlace from './plan/place.ts'
import * as route from './plan/route.ts'
import { share, unshare } from './plan/share.ts'
import { shift, turn } from './plan/shift.ts'
import * as survey from './plan/survey.ts'
import { survey as surveyGet } from './plan/survey-get.ts'
import { underlayServices } from './plan/underlay.ts'
import { receiptServices } from './receipts/receipts.ts'
import * as condition from './record/condition/draft.ts'
import * as photos from './record/condition/photos.ts'
import * as seal from './record/condition/seal.ts'
import * as conditionTold from './record/condition/tell.ts'
import * as conditionWords from './record/condition/words.ts'
import { damageServices } from './record/damage/damage.ts'
import { history as movementHistory, list as movementList } from './record/history.ts'
import { leaving } from './record/leaving.ts'
import * as locations from './record/locations.ts'
import { onDay } from './record/on-day.ts'
import * as planned from './record/planned.ts'
import * as plannedChange from './record/planned-change.ts'
import * as record from './record/record.ts'
import { way } from './record/ways.ts'
import { where } from './record/where.ts'
import { wholes } from './record/wholes.ts'
import { checkRoom } from './rooms/check.ts'
import { copyRoom } from './rooms/copy.ts'
import { findings as roomFindings } from './rooms/findings.ts'
import * as fixtures from './rooms/fixtures.ts'
import { joinWall } from './rooms/join.ts'
import * as partitions from './rooms/partitions.ts'
import * as roomsRead from './rooms/read.ts'
import { splitWall } from './rooms/split.ts'
import * as standing from './rooms/standing.ts'
import { addTrack, changeTrack, removeTrack } from './rooms/tracks.ts'
import * as roomsWrite from './rooms/write.ts'
import { addZone, changeZone, removeZone } from './rooms/zones.ts'
import { rulesServices } from './rules.ts'
import { sequenceRulesServices } from './sequence/rules.ts'
import { sequenceServices } from './sequence/sequence.ts'
import type { CatalogueServices, PureServices } from './service.ts'
import { takeApart } from './sets/apart.ts'
import * as sets from './sets/change.ts'
import { make as makeSet } from './sets/make.ts'
import * as partNumbers from './sets/numbers.ts'
import { sheetServices } from './sheets/sheets.ts'
import { takeOut } from './take-out/take-out.ts'
import { elevation } from './walls/elevation.ts'
import * as findings from './walls/findings.ts'
import * as library from './walls/fixing-library.ts'
import * as fixings from './walls/fixings.ts'
import * as layouts from './walls/layouts.ts'
import * as placements from './walls/placements.ts'
import { weightSeen, weights } from './walls/weights.ts'
import * as facts from './works/facts.ts'
import { fileServices } from './works/files.ts'
import { get } from './works/get.ts'
import * as lists from './works/list.ts'
import * as measures from './works/measures.ts'
import { list as numberList } from './works/numbers.ts'
import { addStatement } from './works/statement.ts'
import { weighPictures } from './works/tones.ts'

export const pureServices: PureServices = {
  ...computations,
  'crew.lifting': lifting,
}

export const catalogueServices: CatalogueServices = {
  ...peopleServices,
  ...partyServices,
  ...labelServices,
  'location.list': locations.list,
  'location.add': locations.add,
  'location.update': locations.change,
  'location.remove': locations.remove,
  'movement.check': record.check,
  'movement.way': way,
  'movement.wholes': wholes,
  'movement.add': record.add,
  'movement.correct': record.correct,
  'movement.takeHung': record.takeHung,
  'movement.where': where,
  'movement.history': movementHistory,
  'movement.list': movementList,
  'planned.list': planned.list,
  'planned.check': planned.check,
  'planned.add': plannedChange.add,
  'planned.fromShow': plannedChange.fromShow,
  'planned.update': plannedChange.change,
  'planned.setDay': plannedChange.setDay,
  'planned.remove': plannedChange.remove,
  'condition.words': conditionWords.words,
  'condition.addWord': conditionWords.addWord,
  'condition.removeWord': conditionWords.removeWord,
  'condition.list': conditionTold.list,
  'condition.get': conditionTold.get,
  'condition.compare': conditionTold.compare,
  'condition.add': condition.add,
  'condition.update': condition.change,
  'condition.remove': condition.remove,
  'condition.addFinding': condition.addFinding,
  'condition.updateFinding': condition.changeFinding,
  'condition.removeFinding': condition.removeFinding,
  'condition.addPhoto': photos.addPhoto,
  'condition.updatePhoto': photos.changePhoto,
  'condition.movePhoto': photos.movePhoto,
  'condition.removePhoto': photos.removePhoto,
  'condition.sign': seal.sign,
  'condition.complete': seal.complete,
  'condition.correct': seal.correct,
  ...damageServices,
  ...importServices,
  ...drawingServices,
  ...underlayServices,
  ...rulesServices,
  'edit.state': editState,
  'edit.list': editList,
  'edit.changes': editChanges,
  'edit.history': editHistory,
  'edit.explain': editExplain,
  'catalogue.backups': backups,
  'catalogue.backup': backup,
  'catalogue.keepBackup': keepBackup,
  'catalogue.saveCopy': saveCopy,
  'catalogue.takeOut': takeOut,
  'catalogue.check': check,
  'catalogue.tidy': tidy,
  'work.list': lists.list,
  'work.counts': lists.counts,
  'work.get': get,
  'work.add': facts.add,
  'work.update': facts.change,
  'work.updateMany': facts.changeMany,
  'work.duplicate': facts.duplicate,
  'work.remove': facts.remove,
  'work.addNumber': facts.addNumber,
  'work.changeNumber': facts.changeNumber,
  'work.removeNumber': facts.removeNumber,
  'number.list': numberList,
  'number.ofParts': partNumbers.ofParts,
  'number.giveParts': partNumbers.giveParts,
  'work.addSize': measures.addSize,
  'work.addStatement': addStatement,
  'work.chooseSize': measures.chooseSize,
  'work.addMass': measures.addMass,
  'work.chooseMass': measures.chooseMass,
  'work.setBack': measures.setBack,
  ...fileServices,
  ...sequenceServices,
  ...sequenceRulesServices,
  'set.make': makeSet,
  'set.takeApart': takeApart,
  'set.update': sets.change,
  'set.parts': sets.changeParts,
  'set.fix': sets.fix,
  'exhibition.list': exhibitions.list,
  'exhibition.add': exhibitions.add,
  'exhibition.update': exhibitions.change,
  'exhibition.setState': exhibitions.setState,
  'exhibition.copy': exhibitions.copy,
  'exhibition.remove': exhibitions.remove,
  'exhibition.frieze': exhibitions.frieze,
  'exhibition.renumber': entries.renumber,
  'section.add': exhibitions.addSection,
  'section.update': exhibitions.changeSection,
  'section.move': exhibitions.moveSection,
  'section.remove': exhibitions.removeSection,
  'entry.add': entries.add,
  'entry.move': entries.move,
  'entry.setRunning': entries.setRunning,
  'entry.setStatus': entries.setStatus,
  'entry.remove': entries.remove,
  'room.list': roomsRead.list,
  'room.plan': (reading, input) =>
    roomsRead.plan(reading, input, face => findings.countsOfFace(reading.db, input.exhibition ?? '', face)),
  'room.findings': roomFindings,
  'room.check': checkRoom,
  'room.setBuilding': roomsWrite.setBuilding,
  'room.add': roomsWrite.addRoom,
  'room.update': roomsWrite.changeRoom,
  'room.copy': copyRoom,
  'room.move': roomsWrite.moveRoom,
  'room.remove': roomsWrite.removeRoom,
  'plan.get': planRead.plan,
  'plan.placeRoom': planPlace.placeRooms,
  'plan.setNorth': planPlace.setNorth,
  'wall.share': share,
  'wall.unshare': unshare,
  'wall.shift': shift,
  'wall.turn': turn,
  'wall.add': roomsWrite.addWall,
  'wall.update': roomsWrite.changeWall,
  'wall.move': roomsWrite.moveWall,
  'wall.remove': roomsWrite.removeWall,
  'wall.split': splitWall,
  'wall.join': joinWall,
  'route.set': route.setRoute,
  'wall.rename': route.renameWalls,
  'partition.list': partitions.list,
  'partition.add': partitions.add,
  'partition.update': partitions.change,
  'partition.remove': partitions.remove,
  'standing.list': standing.list,
  'standing.add': standing.add,
  'standing.update': standing.change,
  'standing.remove': standing.remove,
  'track.add': addTrack,
  'track.update': changeTrack,
  'track.remove': removeTrack,
  'zone.add': addZone,
  'zone.update': changeZone,
  'zone.remove': removeZone,
  'survey.get': surveyGet,
  'survey.add': survey.addMeasure,
  'survey.update': survey.changeMeasure,
  'survey.remove': survey.removeMeasure,
  'opening.add': fixtures.addOpening,
  'opening.update': fixtures.changeOpening,
  'opening.pair': fixtures.pairOpenings,
  'opening.remove': fixtures.removeOpening,
  'keepClear.add': fixtures.addKeepClear,
  'keepClear.update': fixtures.changeKeepClear,
  'keepClear.remove': fixtures.removeKeepClear,
  'wall.elevation': elevation,
  'wall.weights': weights,
  'work.weightSeen': weightSeen,
  'picture.weigh': weighPictures,
  'wall.plan': placements.plan,
  'placement.put': placements.put,
  'placement.remove': placements.remove,
  'placement.update': placements.change,
  'placement.hold': placements.hold,
  'placement.setState': placements.setState,
  'placement.steps': placements.steps,
  'mark.ofFace': marks.ofFace,
  'mark.set': marks.set,
  'mark.services': marks.services,
  'mark.fill': marks.fill,
  'mark.note': marks.note,
  'lock.list': locks.list,
  'late.offer': late.offer,
  'late.take': late.take,
  ...climateServices,
  'light.hours': lightHours.list,
  'light.addHours': lightHours.add,
  'light.updateHours': lightHours.change,
  'light.removeHours': lightHours.remove,
  'light.addReading': lightReadings.add,
  'light.strikeReading': lightReadings.strike,
  'leaving.list': leaving,
  'work.onDay': onDay,
  'light.ledger': ledger,
  'light.list': lightList,
  ...loanServices,
  ...receiptServices,
  ...insuredServices,
  'layout.keep': layouts.keep,
  'layout.compare': layouts.compare,
  'layout.take': layouts.take,
  'layout.remove': layouts.remove,
  'fixing.list': fixings.list,
  'fixing.add': fixings.add,
  'fixing.addUsual': fixings.addUsual,
  'fixing.update': fixings.change,
  'fixing.rate': fixings.rate,
  'fixing.unrate': fixings.unrate,
  'fixing.copy': library.copy,
  'fixing.remove': library.remove,
  'fixing.uses': library.uses,
  'finding.list': findings.list,
  'finding.settle': findings.settle,
  'finding.unsettle': findings.unsettle,
  ...crewServices,
  ...sheetServices,
}
