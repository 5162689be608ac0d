/** Changing the person on this phone, without signal, among those who once signed in here. */
import { BackKey, MainKey } from "../../parts/Cup.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { PEOPLE } from "../../text/sign_in.ts";
import { KnownPeople } from "./KnownPeople.tsx";

/** Each person's entries stay their own, and go up under their own name. */
export function Screen() {
  return (
    <Frame
      where={PEOPLE.where}
      title={PEOPLE.title}
      calm={PEOPLE.calm}
      benchName={PEOPLE.bench}
      bench={
        <Foot>
          <BackKey href="#/" />
          <MainKey words={PEOPLE.another} href="#/sign-in" />
        </Foot>
      }
    >
      <KnownPeople />
    </Frame>
  );
}
