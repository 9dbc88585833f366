import type { PersonRole, PersonState } from '@/lib/reports/people-options'

export const ROLE_WORDS: Readonly<Record<PersonRole, string>> = { student: 'Student', instructor: 'Instructor', coordinator: 'Coordinator' }
export const STATE_WORDS: Readonly<Record<PersonState, string>> = { active: 'Can sign in', 'no-password': 'No password yet', disabled: 'Disabled' }

export const rolesText = (roles: readonly PersonRole[]): string => roles.map((role) => ROLE_WORDS[role]).join(', ') || 'none'
