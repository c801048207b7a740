/** What stands behind the pages, by page. */
export interface Question {
  readonly what: string;
  readonly path: string;
}

export interface AskedThings {
  readonly coachId: string;
  readonly roomId: string;
  readonly strokeId: string;
  readonly serviceId: string;
  /** Of every room. */
  readonly verdict: string;
}

export function questionsOf({ coachId, roomId, strokeId, serviceId, verdict }: AskedThings): Question[] {
  const room = `/rooms/${roomId}`;
  const of = (what: string, ...paths: string[]) => paths.map((path) => ({ what, path }));
  return [
    ...of('the lot', '/overview?limit=10', '/overview/summary'),
    ...of('the lot, filtered', `/overview?limit=10&verdict=${verdict}`),
    ...of('the lot, searched', '/overview?limit=10&q=heron'),
    ...of('the coaches', '/coaches?limit=10', '/warnings?state=open&limit=10'),
    ...of('a coach', `/coaches/${coachId}`, `/coaches/${coachId}/rooms`, `/coaches/${coachId}/loggers`),
    ...of('a room', room, `${room}/status`, `${room}/strokes?limit=20`, `${room}/warnings?state=all`),
    ...of('the work done on a room', `${room}/services`),
    ...of('a trend', `${room}/trend?measure=runningAmps&direction=extend&side=front`),
    ...of('a stroke', `/strokes/${strokeId}`, `${room}/normal?direction=extend&stroke=${strokeId}`),
    ...of('before and after', `${room}/comparison?service=${serviceId}`),
    ...of('people', '/people', '/record?limit=20'),
  ];
}
