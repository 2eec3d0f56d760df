/*
 * A disk that loses power or fails, for one process (LD_PRELOAD; Linux).
 *
 * It follows every write to files under FAULT_FOLDER (except SQLite's shared memory, which no disk promises to keep) and
 * remembers, for each file, the writes since it was last synced: old bytes and new. When the power goes, all of them are
 * taken back, last first, which gives the file as it is certain to be on the disk; then each is put on again or not, by
 * chance, whole or cut at a sector, since a disk may have got to any of them in any order.
 *
 *   FAULT_FOLDER  files under this path are followed
 *   FAULT_CUT     the power goes at this event (a write, a truncation or a sync), counted from 1; then exit 137
 *   FAULT_SEED    chance; 0: nothing that was not synced survives
 *   FAULT_SYNC    this sync, counted from 1, and the FAULT_TIMES - 1 after it fail with EIO
 *   FAULT_WRITE   this write and the FAULT_TIMES - 1 after it fail with ENOSPC
 */
#define _GNU_SOURCE
#include <dlfcn.h>
#include <errno.h>
#include <fcntl.h>
#include <pthread.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <sys/uio.h>
#include <unistd.h>

enum { SECTOR = 512, MOST = 4096 };

typedef struct change {
  dev_t device;
  ino_t inode;
  int descriptor;
  off_t at;
  size_t length;        /* bytes written; 0 for a truncation */
  off_t size_before, size_after;
  size_t old_length;    /* bytes that were at `at` before */
  unsigned char *old_bytes, *new_bytes;
  struct change *earlier, *later;
} change;

/* One descriptor of our own a file, never closed: the program may close its own before the power goes. */
static struct { dev_t device; ino_t inode; int descriptor; } held[MOST];
static int held_count;

static change *newest, *oldest;
static unsigned char followed[MOST];
static const char *folder;
static long events, cut_at, syncs, fail_sync, writes, fail_write, times = 1;
static uint64_t chance;
static int chosen;
static pthread_mutex_t lock = PTHREAD_MUTEX_INITIALIZER;

static ssize_t (*real_pwrite)(int, const void *, size_t, off_t);
static ssize_t (*real_write)(int, const void *, size_t);
static ssize_t (*real_pread)(int, void *, size_t, off_t);
static int (*real_truncate)(int, off_t);
static int (*real_sync)(int);
static int (*real_data_sync)(int);
static int (*real_open)(const char *, int, ...);
static int (*real_close)(int);

static long setting(const char *name, long otherwise) {
  const char *text = getenv(name);
  return text ? atol(text) : otherwise;
}

__attribute__((constructor)) static void begin(void) {
  real_pwrite = dlsym(RTLD_NEXT, "pwrite64");
  real_write = dlsym(RTLD_NEXT, "write");
  real_pread = dlsym(RTLD_NEXT, "pread64");
  real_truncate = dlsym(RTLD_NEXT, "ftruncate64");
  real_sync = dlsym(RTLD_NEXT, "fsync");
  real_data_sync = dlsym(RTLD_NEXT, "fdatasync");
  real_open = dlsym(RTLD_NEXT, "open64");
  real_close = dlsym(RTLD_NEXT, "close");
  folder = getenv("FAULT_FOLDER");
  cut_at = setting("FAULT_CUT", 0);
  fail_sync = setting("FAULT_SYNC", 0);
  fail_write = setting("FAULT_WRITE", 0);
  times = setting("FAULT_TIMES", 1);
  chosen = (int)setting("FAULT_SEED", 0);
  chance = 0x9e3779b97f4a7c15u * (uint64_t)(chosen + 1);
}

/* xorshift (Marsaglia 2003): the same seed loses the same writes. */
static uint64_t random_bits(void) {
  chance ^= chance << 13;
  chance ^= chance >> 7;
  chance ^= chance << 17;
  return chance;
}

static void power_goes(void) {
  for (change *each = newest; each; each = each->earlier) {
    if (each->old_length) real_pwrite(each->descriptor, each->old_bytes, each->old_length, each->at);
    real_truncate(each->descriptor, each->size_before);
  }
  for (change *each = oldest; each && chosen; each = each->later) {
    uint64_t bits = random_bits();
    if (bits & 1) continue;
    if (!each->length) {
      real_truncate(each->descriptor, each->size_after);
      continue;
    }
    size_t kept = each->length;
    if (bits & 2) kept = (bits >> 8) % (kept / SECTOR + 1) * SECTOR;
    if (kept) real_pwrite(each->descriptor, each->new_bytes, kept, each->at);
  }
  dprintf(2, "the power went at event %ld\n", events);
  _exit(137);
}

static void event(void) {
  events++;
  if (events == cut_at) power_goes();
}

static int follows(int descriptor) {
  return descriptor >= 0 && descriptor < MOST && followed[descriptor];
}

static int hold(int descriptor, const struct stat *there) {
  for (int each = 0; each < held_count; each++)
    if (held[each].device == there->st_dev && held[each].inode == there->st_ino) return held[each].descriptor;
  int own = dup(descriptor);
  if (own < 0 || held_count == MOST) abort();
  followed[own] = 0;
  held[held_count].device = there->st_dev;
  held[held_count].inode = there->st_ino;
  held[held_count++].descriptor = own;
  return own;
}

static void remember(int descriptor, const void *bytes, size_t length, off_t at, off_t size_after) {
  struct stat there;
  if (fstat(descriptor, &there)) return;
  change *made = calloc(1, sizeof *made);
  made->device = there.st_dev;
  made->inode = there.st_ino;
  made->descriptor = hold(descriptor, &there);
  made->at = at;
  made->length = length;
  made->size_before = there.st_size;
  made->size_after = size_after;
  size_t reach = at < there.st_size ? (size_t)(there.st_size - at) : 0;
  if (length && reach > length) reach = length;
  if (reach) {
    made->old_bytes = malloc(reach);
    ssize_t got = real_pread(descriptor, made->old_bytes, reach, at);
    made->old_length = got > 0 ? (size_t)got : 0;
  }
  if (length) {
    made->new_bytes = malloc(length);
    memcpy(made->new_bytes, bytes, length);
  }
  made->earlier = newest;
  if (newest) newest->later = made; else oldest = made;
  newest = made;
}

/* What is synced can't be lost any more. */
static void settle(int descriptor) {
  struct stat there;
  if (fstat(descriptor, &there)) return;
  for (change *each = oldest, *next; each; each = next) {
    next = each->later;
    if (each->device != there.st_dev || each->inode != there.st_ino) continue;
    if (each->earlier) each->earlier->later = each->later; else oldest = each->later;
    if (each->later) each->later->earlier = each->earlier; else newest = each->earlier;
    free(each->old_bytes);
    free(each->new_bytes);
    free(each);
  }
}

static int fails(long *count, long from) {
  (*count)++;
  return from && *count >= from && *count < from + times;
}

static int opened(int descriptor, const char *path, int flags) {
  if (descriptor < 0 || descriptor >= MOST) return descriptor;
  size_t length = strlen(path);
  int shared = length > 4 && !strcmp(path + length - 4, "-shm");
  followed[descriptor] = folder && !strncmp(path, folder, strlen(folder)) && !shared && !(flags & O_DIRECTORY);
  return descriptor;
}

int open(const char *path, int flags, ...) {
  __builtin_va_list rest;
  __builtin_va_start(rest, flags);
  int mode = (flags & (O_CREAT | O_TMPFILE)) ? __builtin_va_arg(rest, int) : 0;
  __builtin_va_end(rest);
  int descriptor = real_open(path, flags & ~O_TRUNC, mode);
  opened(descriptor, path, flags);
  if (descriptor >= 0 && (flags & O_TRUNC)) ftruncate(descriptor, 0);
  return descriptor;
}

int open64(const char *path, int flags, ...) {
  __builtin_va_list rest;
  __builtin_va_start(rest, flags);
  int mode = (flags & (O_CREAT | O_TMPFILE)) ? __builtin_va_arg(rest, int) : 0;
  __builtin_va_end(rest);
  return open(path, flags, mode);
}

int close(int descriptor) {
  if (descriptor >= 0 && descriptor < MOST) followed[descriptor] = 0;
  return real_close(descriptor);
}

static int before_write(int descriptor, const void *bytes, size_t length, off_t at) {
  event();
  if (fails(&writes, fail_write)) {
    errno = ENOSPC;
    return -1;
  }
  remember(descriptor, bytes, length, at, 0);
  return 0;
}

ssize_t pwrite64(int descriptor, const void *bytes, size_t length, off_t at) {
  if (!follows(descriptor)) return real_pwrite(descriptor, bytes, length, at);
  pthread_mutex_lock(&lock);
  ssize_t result = before_write(descriptor, bytes, length, at) ? -1 : real_pwrite(descriptor, bytes, length, at);
  pthread_mutex_unlock(&lock);
  return result;
}

ssize_t pwrite(int descriptor, const void *bytes, size_t length, off_t at) {
  return pwrite64(descriptor, bytes, length, at);
}

ssize_t write(int descriptor, const void *bytes, size_t length) {
  if (!follows(descriptor)) return real_write(descriptor, bytes, length);
  off_t at = lseek(descriptor, 0, SEEK_CUR);
  ssize_t result = pwrite64(descriptor, bytes, length, at);
  if (result > 0) lseek(descriptor, at + result, SEEK_SET);
  return result;
}

ssize_t pwritev64(int descriptor, const struct iovec *parts, int count, off_t at) {
  ssize_t total = 0;
  for (int part = 0; part < count; part++) {
    ssize_t done = pwrite64(descriptor, parts[part].iov_base, parts[part].iov_len, at + total);
    if (done < 0) return total ? total : -1;
    total += done;
  }
  return total;
}

ssize_t pwritev(int descriptor, const struct iovec *parts, int count, off_t at) {
  return pwritev64(descriptor, parts, count, at);
}

int ftruncate64(int descriptor, off_t length) {
  if (!follows(descriptor)) return real_truncate(descriptor, length);
  pthread_mutex_lock(&lock);
  event();
  remember(descriptor, NULL, 0, length, length);
  int result = real_truncate(descriptor, length);
  pthread_mutex_unlock(&lock);
  return result;
}

int ftruncate(int descriptor, off_t length) { return ftruncate64(descriptor, length); }

static int synced(int descriptor, int (*real)(int)) {
  if (!follows(descriptor)) return real(descriptor);
  pthread_mutex_lock(&lock);
  event();
  int result = -1;
  if (fails(&syncs, fail_sync)) errno = EIO;
  else if (!(result = real(descriptor))) settle(descriptor);
  pthread_mutex_unlock(&lock);
  return result;
}

int fsync(int descriptor) { return synced(descriptor, real_sync); }
int fdatasync(int descriptor) { return synced(descriptor, real_data_sync); }
