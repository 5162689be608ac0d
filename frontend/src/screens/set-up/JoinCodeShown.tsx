/** A join code, large and in groups, and as a picture another phone can read. */
import { Notice } from "../../parts/Plain.tsx";
import { Qr } from "../../parts/Qr.tsx";
import { clockWords } from "../../text/numbers.ts";
import { MEMBERS } from "../../text/set_up.ts";
import { zone } from "../common/edge.ts";
import { useNow } from "../common/use_now.ts";
import { groupsOf } from "./code_groups.ts";

/** A code and when it ends, as the server answered. */
export interface JoinCode {
  code: string;
  expires_at: string;
}

/** Nothing of it is kept: a lost code is made again. */
export function JoinCodeShown({ code }: { code: JoinCode }) {
  const now = useNow();
  if (now.value >= Date.parse(code.expires_at)) return <Notice isLive>{MEMBERS.over}</Notice>;
  const address = `${location.origin}/#/sign-in/join/${code.code}`;
  return (
    <div class="join-code">
      <p class="second">{MEMBERS.code}</p>
      <p class="join-signs">
        {groupsOf(code.code).map((group, at) => (
          <span key={at}>{group}</span>
        ))}
      </p>
      <p>
        <b>{MEMBERS.good_until(clockWords(code.expires_at, zone()))}</b>
      </p>
      <Qr text={address} says={MEMBERS.qr} />
      <p class="second">{MEMBERS.show}</p>
    </div>
  );
}
