#include "core/units/quantity.h"
