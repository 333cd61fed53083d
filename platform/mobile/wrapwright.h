/* Wrapwright's core behind a small C interface, for a native shell on Android, iOS or anything else
 * that can call C.
 *
 * Recipe text in, the record of its tying out, events of a sitting in and where the person stands
 * out. The core reads no file, clock or locale and keeps nothing: the shell stores the events as they
 * happen, and replays them when it opens a sitting again.
 *
 * Text is UTF-8. Lengths are in m, masses in kg, times in s. One ww_bench belongs to one thread at a
 * time; different ones are independent. A pointer that a function does not explain may not be null.
 * A function that takes an index answers WW_OUT_OF_RANGE for one that is not there. What comes in as
 * one of an enumeration is an int, so that a value that none of them has can be refused. */
#ifndef WRAPWRIGHT_H
#define WRAPWRIGHT_H

#include <stddef.h>

#ifdef __cplusplus
extern "C" {
#endif

/* Rises when something here stops meaning what it meant. */
#define WW_INTERFACE 1
int ww_interface(void);

typedef enum ww_code {
    WW_OK = 0,
    WW_NOT_FOUND,
    WW_MALFORMED,
    WW_OUT_OF_RANGE,
    WW_UNKNOWN_UNIT,
    WW_UNKNOWN_WORD,
    WW_UNKNOWN_VERSION,
    WW_DUPLICATE,
    WW_CYCLIC,
    WW_TOO_LARGE,
    WW_AMBIGUOUS
} ww_code;

/* What is wrong and what mends it, cut to fit; line 0 is nowhere in particular. */
typedef struct ww_error {
    ww_code code;
    int line;
    char message[256];
    char remedy[256];
} ww_error;

/* One recipe at one size, tied, with a sitting at it. */
typedef struct ww_bench ww_bench;

/* Reads a recipe and ties it. `size` is a hook size such as "14", or null for the recipe's middle
 * one. On WW_OK *bench must be closed; otherwise it is null. `error` may be null. */
ww_code ww_open(const char* recipe, size_t recipe_bytes, const char* size, ww_bench** bench,
                ww_error* error);
/* A null bench is passed over. */
void ww_close(ww_bench* bench);

/* The record. */

typedef struct ww_record {
    int steps, moments, windings, takes, findings;
    double mass, mass_low,
        mass_high; /* of the whole fly, and the interval that it lies in 95 times in 100 */
} ww_record;
ww_code ww_get_record(const ww_bench* bench, ww_record* record);

/* The fly after one action. */
typedef struct ww_moment {
    int step, base;
    int windings, findings; /* how many there are by then */
    int restore_point;      /* a broken thread falls back to here */
    double thread_length;   /* drawn so far */
} ww_moment;
ww_code ww_get_moment(const ww_bench* bench, int index, ww_moment* moment);

typedef struct ww_winding {
    int step, base, part, layer;
    int against_thread;
    double from, to; /* along the wire behind the eye, in the order of winding */
    double turns, pitch, width, height, length, mass;
} ww_winding;
ww_code ww_get_winding(const ww_bench* bench, int index, ww_winding* winding);

/* What one part took of one material in one step; part and material -1 where there is none. */
typedef struct ww_take {
    int step, part, material;
    double count, turns, length, mass;
} ww_take;
ww_code ww_get_take(const ww_bench* bench, int index, ww_take* take);

typedef enum ww_level { WW_STOPS = 0, WW_LIKELY, WW_NOTE } ww_level;
typedef struct ww_finding {
    int step;
    ww_level level;
} ww_finding;
ww_code ww_get_finding(const ww_bench* bench, int index, ww_finding* finding);

/* Texts. Each call writes at most `room` bytes with a closing 0, whole letters only, and returns how
 * many the whole text has without it; 0 for an index that is not there. `to` may be null if room is
 * 0. */

typedef enum ww_text {
    WW_TEXT_NAME = 0, /* of the recipe; index is not looked at */
    WW_TEXT_SIZE,     /* of the hook */
    WW_TEXT_STEP,     /* a step in its author's words; index of the step */
    WW_TEXT_CAUTION,  /* the usual cautions at a step; index of the step */
    WW_TEXT_ACTION,   /* what an action came to; index of the moment */
    WW_TEXT_FINDING,  /* a finding with its remedy; index of the finding */
    WW_TEXT_PART,     /* a part's name; index of the part */
    WW_TEXT_MATERIAL  /* a material's name; index of the material */
} ww_text;
/* `which` is a ww_text; another value has no text. */
size_t ww_get_text(const ww_bench* bench, int which, int index, char* to, size_t room);

/* The sitting. */

typedef enum ww_event_kind {
    WW_BEGIN = 0, /* number = flies, 1 to 1000; the first event, and only that */
    WW_NEXT,
    WW_BACK,
    WW_TURN,
    WW_GO_TO, /* number = stop */
    WW_THREAD_BROKE,
    WW_DONE_OTHERWISE, /* text */
    WW_FLY_SPOILT,     /* text = why */
    WW_STRIP,
    WW_UNDO
} ww_event_kind;

typedef struct ww_event {
    int kind;  /* a ww_event_kind */
    double at; /* the person's clock, from any fixed moment, never going back */
    int number;
    const char* text; /* may be null */
} ww_event;

typedef struct ww_place {
    int stop, stops; /* stop == stops when all is done */
    int fly, moment; /* of that stop; -1 when all is done */
    double turns;    /* counted here */
    int breaks, events;
} ww_place;

/* Takes one event more. An event that cannot apply where the person stands changes nothing.
 * WW_MALFORMED: no begin came first, or a second one; WW_OUT_OF_RANGE: a kind, number of flies or
 * time that cannot be meant. */
ww_code ww_happen(ww_bench* bench, const ww_event* event);
/* WW_NOT_FOUND before the sitting has begun. */
ww_code ww_where(const ww_bench* bench, ww_place* place);

#ifdef __cplusplus
}
#endif

#endif
