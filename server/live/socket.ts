/** What we use of an open WebSocket. */
export interface Socket {
  readonly bufferedAmount: number;
  /** `then` is called once the message has left for the other end, or never will. */
  send(message: string | Uint8Array, then?: () => void): void;
  ping(): void;
  /** Stops reading: the other end has to wait. */
  pause(): void;
  resume(): void;
  close(code: number, reason: string): void;
  /** Ends it at once, without a closing handshake. */
  terminate(): void;
  on(event: 'message', then: (bytes: Buffer, isBinary: boolean) => void): void;
  on(event: 'pong' | 'close', then: () => void): void;
}

/** Why the service closes a socket (RFC 6455, section 7.4; 4000 and above are our own). */
export const CLOSE = {
  goingAway: 1001,
  policy: 1008,
  tryAgainLater: 1013,
  notSignedIn: 4401,
  silent: 4408,
  takenOver: 4409,
} as const;
