/** What we use of an open WebSocket; the library's own types come without its package. */
export interface Socket {
  readonly bufferedAmount: number;
  send(text: string): void;
  ping(): void;
  close(code: number, reason: string): void;
  /** Ends it at once, without a closing handshake. */
  terminate(): void;
  on(event: 'message', then: (bytes: Buffer, isBinary: boolean) => void): void;
  on(event: 'pong' | 'close', then: () => void): void;
}

/** Why the service closes a socket (RFC 6455, section 7.4; 4000 and above are our own). */
export const CLOSE = { goingAway: 1001, policy: 1008, notSignedIn: 4401 } as const;
