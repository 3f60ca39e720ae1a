// The named views. Each has right × up = towards, so that pictures are never mirrored.

#include "solid/solid.hpp"

namespace rayfleck::solid {

View front_view() { return {{1, 0, 0}, {0, 0, 1}, {0, -1, 0}}; }
View top_view() { return {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}; }
View right_view() { return {{0, 1, 0}, {0, 0, 1}, {1, 0, 0}}; }
View left_view() { return {{0, -1, 0}, {0, 0, 1}, {-1, 0, 0}}; }
View back_view() { return {{-1, 0, 0}, {0, 0, 1}, {0, 1, 0}}; }
View bottom_view() { return {{1, 0, 0}, {0, -1, 0}, {0, 0, -1}}; }

View isometric_view() {
    View view;
    view.towards = measure::unit({1, -1, 1});
    view.right = measure::unit({1, 1, 0});
    view.up = cross(view.towards, view.right);
    return view;
}

} // namespace rayfleck::solid
