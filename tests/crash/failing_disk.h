// SPDX-License-Identifier: GPL-3.0-or-later
//
// A disk that fails when told to. Every write, sync, truncation and deletion that SQLite does passes through
// a VFS of ours over the default one, and every step of book/files.h through its watcher; each is one point,
// counted from 1. At the point chosen the program is killed, in the middle of the write, or from there on the
// disk is full.
#pragma once

namespace insetbook {

enum class Failure { none, kill, disk_full };

// Registers the VFS as the default one; once.
void use_failing_disk();

// Counts from 0 again; fails at `point` (0 = never).
void fail_at(Failure failure, int point);
int points_passed();

}  // namespace insetbook
