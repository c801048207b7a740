type Profile = readonly (number | null)[];

/** A stroke's usual current by place, for one side. */
export interface ProfileLine {
  readonly side: string;
  readonly profile: Profile;
}

/** Another stroke laid over this one. */
export interface Overlay {
  readonly letter: string;
  readonly lines: readonly ProfileLine[];
}
