// All that a dialog or a panel opened seldom may hold, in one piece: apart each would be one more small file to ask for.

export { HandOver } from '../handover/hand-over.tsx';
export { HandOverPairs } from '../handover/pairs/hand-over-pairs.tsx';
export { NoteDialog } from '../notes/note-dialog.tsx';
export { NotesDialog } from '../notes/notes-dialog.tsx';
export { PlanPanel } from '../plan/plan-panel.tsx';
export { FetchDialog } from '../shelf/fetch/fetch-dialog.tsx';
export { ShelfDialog } from '../shelf/shelf-dialog.tsx';
export { VehicleEditor } from '../vehicle/vehicle-editor.tsx';
export { AboutRules } from './about-rules.tsx';
export { Help } from './help.tsx';
export { SettingsForm } from './settings-form.tsx';
