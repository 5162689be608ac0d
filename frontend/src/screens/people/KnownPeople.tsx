/** The people known on this phone; pressing one changes the person, without signal. */
import { type Choice, Choices } from "../../parts/Choices.tsx";
import { goTo } from "../../state/route.ts";
import { changePerson, current, people } from "../../state/session.ts";
import type { Person } from "../../state/types.ts";
import { PEOPLE } from "../../text/sign_in.ts";

/** Of another person one sees only how much waits (R60). */
export function KnownPeople() {
  async function change(device: string) {
    const person = people.value.find((each) => each.device === device);
    await changePerson(device);
    goTo(person?.must_sign_in ? "/sign-in" : "/");
  }
  return (
    <Choices
      name={PEOPLE.choose}
      items={people.value.map(choice)}
      chosen={current.value?.device ?? null}
      onChoose={(device) => void change(device)}
      none={PEOPLE.none}
    />
  );
}

function choice(person: Person): Choice {
  const { device, member, cooperative, waiting } = person;
  return {
    id: device,
    name: member.name,
    sub: person.must_sign_in ? PEOPLE.must_sign_in : cooperative.name,
    right: device === current.value?.device ? PEOPLE.now : PEOPLE.waiting(waiting),
  };
}
