// Growth, shoulders and sockets of tongues. See tongue.hpp for the picture.
//
// A square joint needs exact sums of lengths only. On a leaning surface the blank must also hold the far
// corner of the slanting shoulder, and the socket begins clear of the surface, so that no sliver is left at
// its mouth.

#include "joinery/tongue.hpp"

#include <algorithm>
#include <cmath>

namespace rayfleck::joinery {

void let_in(Bench& bench, const Pair& pair, int joint, const Meeting& meeting,
            const std::vector<Tongue>& tongues, const Fit& fit) {
    const piece::Part& a = bench.part(pair.a);
    const Length gap = meeting.gap == 0 ? Length() : Length::from_geometry(meeting.gap);
    Standing standing;
    standing.side = meeting.from;
    standing.joint = joint;
    standing.word = fit.cheek;
    standing.window = meeting.window;
    standing.shoulder = meeting.gap;
    Length longest;
    if (!meeting.square) {
        standing.slanting = Plane{-meeting.face.normal, -meeting.face.offset};
        // The blank must hold the far corner of the slanting shoulder.
        Box whole{{}, {size_of(a, 0), size_of(a, 1), size_of(a, 2)}};
        longest = Length::from_geometry(meeting.reach_of(a, meeting.face, whole).second);
    }
    for (const Tongue& tongue : tongues) {
        Length to = gap + tongue.projects;
        double socket_to = to.value() + fit.play;
        const double socket_from = meeting.mouth(a, tongue.section);
        if (fit.through) {
            const auto [near, far] = meeting.reach_of(a, meeting.far, tongue.section);
            if (far - near > 1e-6) {
                to = std::max(to, Length::from_geometry(far));
                socket_to = far + 1.0;
            }
        }
        longest = std::max(longest, to);
        standing.tongues.push_back({tongue.section, to.value()});
        if (!fit.cut_socket) continue;
        Box section = tongue.section;
        section.low[fit.side_play_axis] -= fit.side_play;
        section.high[fit.side_play_axis] += fit.side_play;
        bench.cut_box(pair.b, joint, fit.socket, pair.a, meeting.box(a, section, socket_from, socket_to),
                      tongue.remark);
    }
    bench.grow(pair.a, meeting.from, longest);
    bench.stand(pair.a, std::move(standing));
    if (fit.through && std::abs(std::abs(dot(meeting.far.normal, outward(meeting.from))) - 1) > 1e-9)
        bench.cut(pair.a, joint, "tenon end", piece::PlaneCut{meeting.far, {}, {}});
}

Point middle_of(const Bench& bench, const Pair& pair, const Meeting& meeting, const Box& section,
                double projects) {
    const piece::Part& a = bench.part(pair.a);
    const Box box = meeting.box(a, section, meeting.gap, meeting.gap + projects);
    return a.frame.out((box.low + box.high) * 0.5);
}

} // namespace rayfleck::joinery
