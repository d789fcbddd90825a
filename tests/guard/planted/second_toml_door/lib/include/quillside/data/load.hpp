#pragma once
#include <toml++/toml.h>
