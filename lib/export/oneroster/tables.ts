/**
 * The files of a OneRoster 1.2 set and their columns, in the order of the standard's tables.
 * 1EdTech, “OneRoster: CSV Binding”, version 1.2.1, final release of 22 August 2023
 * (https://www.imsglobal.org/spec/oneroster/v1p2/bind/csv). Only the files that a set of marks needs have columns here.
 */
export const columns = {
  academicSessions: ['sourcedId', 'status', 'dateLastModified', 'title', 'type', 'startDate', 'endDate', 'parentSourcedId', 'schoolYear'],
  categories: ['sourcedId', 'status', 'dateLastModified', 'title', 'weight'],
  classes: ['sourcedId', 'status', 'dateLastModified', 'title', 'grades', 'courseSourcedId', 'classCode', 'classType', 'location', 'schoolSourcedId', 'termSourcedIds', 'subjects', 'subjectCodes', 'periods'],
  courses: ['sourcedId', 'status', 'dateLastModified', 'schoolYearSourcedId', 'title', 'courseCode', 'grades', 'orgSourcedId', 'subjects', 'subjectCodes'],
  enrollments: ['sourcedId', 'status', 'dateLastModified', 'classSourcedId', 'schoolSourcedId', 'userSourcedId', 'role', 'primary', 'beginDate', 'endDate'],
  lineItems: ['sourcedId', 'status', 'dateLastModified', 'title', 'description', 'assignDate', 'dueDate', 'classSourcedId', 'categorySourcedId', 'academicSessionSourcedId', 'resultValueMin', 'resultValueMax', 'schoolSourcedId'],
  orgs: ['sourcedId', 'status', 'dateLastModified', 'name', 'type', 'identifier', 'parentSourcedId'],
  results: ['sourcedId', 'status', 'dateLastModified', 'lineItemSourcedId', 'studentSourcedId', 'scoreStatus', 'score', 'scoreDate', 'comment', 'textScore', 'classSourcedId', 'inProgress', 'incomplete', 'late', 'missing'],
  roles: ['sourcedId', 'status', 'dateLastModified', 'userSourcedId', 'roleType', 'role', 'beginDate', 'endDate', 'orgSourcedId', 'userProfileSourcedId'],
  users: ['sourcedId', 'status', 'dateLastModified', 'enabledUser', 'username', 'userIds', 'givenName', 'familyName', 'middleName', 'identifier', 'email', 'sms', 'phone', 'agentSourcedIds', 'grades', 'password', 'userMasterIdentifier', 'preferredGivenName', 'preferredMiddleName', 'preferredFamilyName', 'primaryOrgSourcedId', 'pronouns'],
} as const;

export type FileName = keyof typeof columns;
export type Row<File extends FileName> = Partial<Record<(typeof columns)[File][number], string | number>>;
export type RosterSet = { [File in FileName]: Row<File>[] };

/** Every file that a manifest has to speak of, whether it is there (`bulk`) or not (`absent`). */
export const filesOfManifest = [
  'academicSessions', 'categories', 'classes', 'classResources', 'courses', 'courseResources', 'demographics', 'enrollments',
  'lineItemLearningObjectiveIds', 'lineItems', 'lineItemScoreScales', 'orgs', 'resources', 'resultLearningObjectiveIds', 'results',
  'resultScoreScales', 'roles', 'scoreScales', 'userProfiles', 'userResources', 'users',
] as const;
