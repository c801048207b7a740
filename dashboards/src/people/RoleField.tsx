import type { Role } from '../api/types.ts';
import { SelectField } from '../forms/SelectField.tsx';
import { peopleWords } from '../words/people.ts';
import { ROLE_CHOICES } from './roles.ts';

interface RoleFieldProps {
  readonly role: Role;
  readonly onChange: (role: Role) => void;
}

/** What a person may do in the account, and what that means. */
export function RoleField({ role, onChange }: RoleFieldProps) {
  return (
    <SelectField
      label={peopleWords.people.role}
      value={role}
      options={ROLE_CHOICES}
      onChange={onChange}
      hint={peopleWords.roleMeans[role]}
    />
  );
}
