/* What a native shell does with the C interface: reads a recipe, shows the record, ties a fly, opens
 * the sitting again from its events, and is refused in plain words. */

#include "platform/mobile/wrapwright.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static int failures = 0;
#define CHECK(condition) \
    do { \
        if (!(condition)) { \
            fprintf(stderr, "%s:%d: %s\n", __FILE__, __LINE__, #condition); \
            ++failures; \
        } \
    } while (0)

static char* read_file(const char* name, size_t* size) {
    FILE* file = fopen(name, "rb");
    char* bytes = malloc(1 << 20);
    *size = file == NULL ? 0 : fread(bytes, 1, 1 << 20, file);
    if (file != NULL) fclose(file);
    return bytes;
}

/* What a shell would keep of a sitting: the events that were taken. */
static ww_event kept[1000];
static int kept_count = 0;

static ww_code happen(ww_bench* bench, int kind, double at, int number) {
    ww_event event;
    ww_code code;
    event.kind = kind;
    event.at = at;
    event.number = number;
    event.text = NULL;
    code = ww_happen(bench, &event);
    if (code == WW_OK && kept_count < 1000) kept[kept_count++] = event;
    return code;
}

static void the_record_is_told(const ww_bench* bench) {
    ww_record record;
    ww_moment moment;
    ww_winding winding;
    ww_take take;
    ww_finding finding;
    char text[256];
    char little[4];
    double mass = 0.0;
    int i;
    CHECK(ww_get_record(bench, &record) == WW_OK);
    CHECK(record.steps > 5 && record.moments >= record.steps && record.windings > 3);
    CHECK(record.mass > 1e-5 && record.mass < 1e-3 && record.mass_low < record.mass && record.mass_high > record.mass);
    for (i = 0; i < record.moments; ++i) {
        CHECK(ww_get_moment(bench, i, &moment) == WW_OK);
        CHECK(moment.step >= 0 && moment.step < record.steps);
        CHECK(ww_get_text(bench, WW_TEXT_ACTION, i, text, sizeof text) > 0);
    }
    CHECK(moment.windings == record.windings); /* after the last action all of them are there */
    for (i = 0; i < record.windings; ++i) {
        CHECK(ww_get_winding(bench, i, &winding) == WW_OK);
        CHECK(winding.turns > 0.0 && winding.length > 0.0);
        CHECK(ww_get_text(bench, WW_TEXT_PART, winding.part, text, sizeof text) > 0 ||
              winding.part == -1);
    }
    for (i = 0; i < record.takes; ++i) {
        CHECK(ww_get_take(bench, i, &take) == WW_OK);
        mass += take.mass;
    }
    /* The tally's lines add up to the fly, to the last places of a sum of so few. */
    CHECK(mass > record.mass * (1.0 - 1e-9) && mass < record.mass * (1.0 + 1e-9));
    for (i = 0; i < record.findings; ++i) CHECK(ww_get_finding(bench, i, &finding) == WW_OK);
    CHECK(ww_get_moment(bench, record.moments, &moment) == WW_OUT_OF_RANGE);
    CHECK(ww_get_winding(bench, -1, &winding) == WW_OUT_OF_RANGE);
    CHECK(ww_get_text(bench, WW_TEXT_STEP, record.steps, text, sizeof text) == 0);
    CHECK(ww_get_text(bench, WW_TEXT_SIZE, 0, text, sizeof text) > 0 && strcmp(text, "14") == 0);
    CHECK(ww_get_text(bench, 77, 0, text, sizeof text) == 0);
    /* Cut to fit, closed, and told how long it is. */
    CHECK(ww_get_text(bench, WW_TEXT_NAME, 0, little, sizeof little) > 3 && strlen(little) == 3);
    CHECK(ww_get_text(bench, WW_TEXT_NAME, 0, NULL, 0) > 3);
}

static void a_fly_is_tied(ww_bench* bench) {
    ww_place place;
    int presses = 0;
    CHECK(ww_where(bench, &place) == WW_NOT_FOUND);
    CHECK(happen(bench, WW_NEXT, 0.0, 0) == WW_MALFORMED);
    CHECK(happen(bench, WW_BEGIN, 0.0, 0) == WW_OUT_OF_RANGE);
    CHECK(happen(bench, WW_BEGIN, 10.0, 2) == WW_OK);
    CHECK(happen(bench, WW_BEGIN, 11.0, 2) == WW_MALFORMED);
    CHECK(happen(bench, WW_NEXT, 9.0, 0) == WW_OUT_OF_RANGE); /* before what was */
    CHECK(happen(bench, 77, 12.0, 0) == WW_OUT_OF_RANGE);
    CHECK(ww_where(bench, &place) == WW_OK);
    CHECK(place.stop == 0 && place.fly == 0 && place.turns == 0.0 && place.events == 1);
    while (place.stop < place.stops && presses < 1000) {
        ++presses;
        CHECK(happen(bench, WW_NEXT, 10.0 + presses, 0) == WW_OK);
        CHECK(ww_where(bench, &place) == WW_OK);
    }
    CHECK(place.stop == place.stops && place.fly == -1 && place.moment == -1);
    CHECK(presses == place.stops);
    CHECK(happen(bench, WW_UNDO, 5000.0, 0) == WW_OK);
    CHECK(ww_where(bench, &place) == WW_OK);
    CHECK(place.stop == place.stops - 1 && place.fly == 1);
}

static void it_is_opened_again_from_its_events(const ww_bench* bench, const char* recipe, size_t size) {
    ww_bench* again = NULL;
    ww_place before, after;
    int i;
    CHECK(kept_count > 10);
    CHECK(ww_open(recipe, size, "14", &again, NULL) == WW_OK);
    for (i = 0; i < kept_count; ++i) CHECK(ww_happen(again, &kept[i]) == WW_OK);
    CHECK(ww_where(bench, &before) == WW_OK);
    CHECK(ww_where(again, &after) == WW_OK);
    CHECK(before.stop == after.stop && before.stops == after.stops && before.fly == after.fly);
    CHECK(before.moment == after.moment && before.turns == after.turns);
    CHECK(before.breaks == after.breaks && before.events == after.events);
    ww_close(again);
}

static void bad_input_is_refused(const char* recipe, size_t size) {
    ww_bench* bench = NULL;
    ww_error error;
    memset(&error, 0, sizeof error);
    CHECK(ww_open("{ not a recipe", 14, NULL, &bench, &error) != WW_OK);
    CHECK(bench == NULL && error.message[0] != '\0' && error.remedy[0] != '\0');
    CHECK(ww_open("", 0, NULL, &bench, NULL) != WW_OK);
    CHECK(ww_open(recipe, size, "no size", &bench, &error) != WW_OK);
    CHECK(ww_open(recipe, size / 2, NULL, &bench, &error) != WW_OK);
    ww_close(NULL);
}

int main(int argc, char** argv) {
    size_t size = 0;
    char* recipe = read_file(argc > 1 ? argv[1] : "", &size);
    ww_bench* bench = NULL;
    ww_error error;
    CHECK(ww_interface() == WW_INTERFACE);
    if (ww_open(recipe, size, "14", &bench, &error) != WW_OK) {
        fprintf(stderr, "%s; %s\n", error.message, error.remedy);
        return 1;
    }
    the_record_is_told(bench);
    a_fly_is_tied(bench);
    it_is_opened_again_from_its_events(bench, recipe, size);
    bad_input_is_refused(recipe, size);
    ww_close(bench);
    free(recipe);
    return failures == 0 ? 0 : 1;
}
