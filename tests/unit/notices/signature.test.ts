import { expect, test } from 'vitest';
import { secretText, signedHeaders } from '../../../server/webhooks/signature.ts';

/** From the tests of the reference implementation: github.com/standard-webhooks, libraries/javascript, "sign function". */
test('a signature is the published one', () => {
  const secret = Buffer.from('MfKQ9r8GKYqrTwjUPD8ILPZIo2LaLaSw', 'base64');
  const at = new Date(1_614_265_330_000);
  expect(signedHeaders('msg_p5jXN8AQM9LWM0D4loKWxJek', at, '{"test": 2432232314}', secret)).toEqual({
    'webhook-id': 'msg_p5jXN8AQM9LWM0D4loKWxJek',
    'webhook-timestamp': '1614265330',
    'webhook-signature': 'v1,g0hM9SsE+OTPJTGt/tmIKtSyZlE3uFJELVlNIOLJ1OE=',
  });
  expect(secretText(secret)).toBe('whsec_MfKQ9r8GKYqrTwjUPD8ILPZIo2LaLaSw');
});
