import { notFound } from '@/lib/access/errors';
import { exportAgreement, exportClass, exportMap } from '@/lib/export/class-tables';
import { fileResponse } from '@/lib/export/file';
import { exportMarks } from '@/lib/export/marks';
import { exportReleasedNotes, exportRoundNotes } from '@/lib/export/notes';
import { exportOneRoster } from '@/lib/export/oneroster';
import { exportClassSet, exportSheet, exportSheetPreview } from '@/lib/export/sheets';
import { annotationType } from '@/lib/export/web-annotations';
import { errorResponse } from '@/lib/http/error-response';
import { route } from '@/lib/http/route';
import { type ExportKind, exportKindSchema } from '@/shared/schemas/export';

type Params = { kind: string; id: string };
type Handler = ReturnType<typeof route>;

const asked = (request: Request, name: string) => new URL(request.url).searchParams.get(name);
const round = (request: Request) => asked(request, 'round');
const paper = (request: Request) => ({
  paper: asked(request, 'paper') ?? undefined,
  licence: asked(request, 'licence') === 'read',
});

const csvResponse = ({ csv, name }: { csv: string | string[]; name: string }) => fileResponse(csv, 'text/csv', name);
const pdfResponse = ({ pdf, name }: { pdf: Parameters<typeof fileResponse>[0]; name: string }) =>
  fileResponse(pdf, 'application/pdf', name);
const notesResponse = ({ annotations, name }: { annotations: unknown; name: string }) =>
  fileResponse(JSON.stringify(annotations, null, 2), annotationType, name);

/** `id` is an exercise's, and for sheets and released notes a proof's. */
const files: Record<ExportKind, Handler> = {
  agreement: route(exportAgreement, {
    read: (request, { id }) => ({ exerciseId: id, roundNumber: round(request) }),
    respond: csvResponse,
  }),
  class: route(exportClass, {
    read: (request, { id }) => ({ exerciseId: id, roundNumber: round(request) }),
    respond: csvResponse,
  }),
  'class-set': route(exportClassSet, {
    read: (request, { id }) => ({ exerciseId: id, roundNumber: round(request), ...paper(request) }),
    respond: pdfResponse,
  }),
  map: route(exportMap, {
    read: (request, { id }) => ({ exerciseId: id, roundNumber: round(request), line: asked(request, 'line') }),
    respond: csvResponse,
  }),
  marks: route(exportMarks, {
    read: (request, { id }) => ({ exerciseId: id, roundNumber: round(request) }),
    respond: csvResponse,
  }),
  notes: route(exportRoundNotes, {
    read: (request, { id }) => ({ exerciseId: id, roundNumber: round(request) }),
    respond: notesResponse,
  }),
  oneroster: route(exportOneRoster, {
    read: (request, { id }) => ({ exerciseId: id, roundNumber: round(request) }),
    respond: ({ zip, name }) => fileResponse(zip, 'application/zip', name),
  }),
  'released-notes': route(exportReleasedNotes, {
    read: (_request, { id }) => ({ proofId: id }),
    respond: notesResponse,
  }),
  'sheet-previews': route(exportSheetPreview, {
    read: (request, { id }) => ({
      exerciseId: id,
      roundNumber: round(request),
      proof: asked(request, 'proof'),
      ...paper(request),
    }),
    respond: pdfResponse,
  }),
  sheets: route(exportSheet, {
    read: (request, { id }) => ({ proofId: id, ...paper(request) }),
    respond: pdfResponse,
  }),
};

/** One file of a round or a proof; its operation decides who may have it. */
export const GET = async (request: Request, context: { params: Promise<Params> }): Promise<Response> => {
  const kind = exportKindSchema.safeParse((await context.params).kind);
  return kind.success ? files[kind.data](request, context) : errorResponse(notFound());
};
