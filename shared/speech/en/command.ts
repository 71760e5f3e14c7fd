import type { Voice } from '../voice.ts';

/** Why the system does not let a file be read or written, for what a person can put right; other codes are shown as they are. */
const CANNOT_READ: Readonly<Record<string, string>> = {
	ENOENT: 'there is no such file',
	EISDIR: 'this is a folder, not a file',
	ENOTDIR: 'a part of this path is not a folder',
	EACCES: 'this user may not read the file',
	ENAMETOOLONG: 'this name is too long',
	ELOOP: 'these links lead round in a circle',
	EINVAL: 'the system cannot read this',
	ERR_STRING_TOO_LONG: 'this file is too large',
	ERR_FS_FILE_TOO_LARGE: 'this file is too large',
	ERR_INVALID_ARG_VALUE: 'this is not the name of a file'
};
const CANNOT_WRITE: Readonly<Record<string, string>> = {
	ENOENT: 'there is no such folder',
	EISDIR: 'this is a folder, not a file',
	ENOTDIR: 'a part of this path is not a folder',
	EEXIST: 'this is a file, not a folder',
	EACCES: 'this user may not write here',
	EPERM: 'this user may not write here',
	EROFS: 'nothing can be written here',
	ENOSPC: 'the disk is full',
	EDQUOT: 'the disk is full',
	EFBIG: 'the file would be larger than this user may write',
	ELOOP: 'these links lead round in a circle',
	ENAMETOOLONG: 'this name is too long',
	ERR_INVALID_ARG_VALUE: 'this is not the name of a file'
};

/** What the command line says. */
export const command = (_voice: Voice) => ({
	cannotRead: ({ code }: { readonly code: string }) => CANNOT_READ[code] ?? `this cannot be read (${code})`,
	cannotWrite: ({ code }: { readonly code: string }) =>
		CANNOT_WRITE[code] ?? `nothing can be written here (${code})`,
	notJson: ({ problem }: { readonly problem: string }) => `this is not JSON: ${problem}`
});
