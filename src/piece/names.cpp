// Looking names up: values, lines, parts, and the near word when there is none.
//
// A recipe sees its own names first, then the values of the file it stands in; lines and parts outside it are
// out of its sight. A made thing's parts carry its name before theirs. Where a broken line may have declared
// what is missing, nothing is said.

#include <algorithm>

#include "piece/elaboration.hpp"

namespace rayfleck::piece {
namespace {

const Scope& outermost(const Scope& scope) {
    const Scope* s = &scope;
    while (s->parent) s = s->parent;
    return *s;
}

/// Copy names as the maker writes them after `at`.
std::vector<std::string> copies_of(const std::vector<PartRef>& refs) {
    std::vector<std::string> out;
    for (const PartRef& ref : refs)
        if (!ref.copy.empty() && std::find(out.begin(), out.end(), ref.copy) == out.end())
            out.push_back(ref.copy);
    return out;
}

std::string listed(const std::vector<std::string>& words) {
    std::string out;
    const std::size_t shown = std::min<std::size_t>(words.size(), 8);
    for (std::size_t i = 0; i < shown; ++i) out += (i ? ", " : "") + words[i];
    if (shown < words.size()) out += " ...";
    return out;
}

void collect(Elaboration& e, Scope& scope, std::vector<MadeCopy*>& path, const std::string& prefix,
             const std::string& base_prefix, std::vector<PartRef>& out) {
    for (const Item& item : scope.items) {
        if (static_cast<int>(out.size()) > limits.parts) return;
        if (item.part) {
            expand(e, *item.part);
            for (const Standing& standing : item.part->standings) {
                PartRef ref{standing.instance,
                            standing.flipped,
                            path,
                            prefix + item.part->name,
                            base_prefix + item.part->name,
                            standing.copy};
                if (!standing.copy.empty()) ref.name += " at " + standing.copy;
                out.push_back(std::move(ref));
            }
            continue;
        }
        expand(e, *item.made);
        if (!item.made->inside) continue;
        for (const auto& copy : item.made->copies) {
            if (static_cast<int>(out.size()) > limits.parts) return;
            path.push_back(copy.get());
            const std::string named =
                copy->copy.empty() ? item.made->name : item.made->name + " " + copy->copy;
            collect(e, *item.made->inside, path, prefix + named + " ", base_prefix + item.made->name + " ",
                    out);
            path.pop_back();
        }
    }
}

bool starts_with(const std::string& text, const std::string& start) {
    return text.compare(0, start.size(), start) == 0;
}

/// `door`, `door stile`, `door left stile` and `door at left` all lead to parts of the made thing `door`.
bool means(const PartRef& ref, const std::string& name, const std::optional<std::string>& copy) {
    const std::string whole = copy ? name + " at " + *copy : name;
    if (ref.name == whole || ref.base == whole) return true;
    if (!copy) {
        if (ref.name == name) return true;
        const std::string without_copy =
            ref.copy.empty() ? ref.name : ref.name.substr(0, ref.name.size() - ref.copy.size() - 4);
        if (without_copy == name) return true;
        return !ref.path.empty() && (starts_with(ref.base, name + " ") || starts_with(ref.name, name + " "));
    }
    if (ref.base == name && ref.copy == *copy) return true;
    return !ref.path.empty() && starts_with(ref.name, name + " " + *copy + " ");
}

} // namespace

ValueEntry* find_value(const Scope& scope, const std::string& name) {
    if (const auto found = scope.values.find(name); found != scope.values.end()) return found->second.get();
    if (!scope.parent) return nullptr;
    const Scope& file = outermost(scope);
    if (const auto found = file.values.find(name); found != file.values.end()) return found->second.get();
    return nullptr;
}

LineEntry* find_line(const Scope& scope, const std::string& name) {
    const auto found = scope.line_names.find(name);
    return found == scope.line_names.end() ? nullptr : found->second;
}

void unknown_name(Elaboration& e, const Scope& scope, const std::string& word, Span span) {
    if (e.lines_may_be_lost || e.values_may_be_lost) return;
    std::vector<std::string> known;
    for (const auto& [name, line] : scope.line_names) known.push_back(name);
    for (const auto& [name, value] : scope.values) known.push_back(name);
    findings::Finding& f = e.error("unknown-name", span, "there is no value and no line `" + word + "`");
    if (const auto near = findings::near_word(word, known))
        f.mend = "did you mean `" + *near + "`?";
    else if (known.empty())
        f.mend = "lines stand on a rod, values after `value`";
}

std::vector<PartRef> all_parts(Elaboration& e, Scope& scope) {
    std::vector<PartRef> out;
    std::vector<MadeCopy*> path;
    collect(e, scope, path, "", "", out);
    return out;
}

std::vector<PartRef> parts_named(Elaboration& e, Scope& scope, const syntax::PartName& name) {
    std::vector<PartRef> out;
    const std::string& word = name.name.text;
    std::optional<std::string> copy;
    if (name.copy) copy = name.copy->text;
    // The usual case first, for speed: a part of this scope by its plain name.
    for (const auto& part : scope.parts) {
        if (part->name != word) continue;
        expand(e, *part);
        for (const Standing& standing : part->standings) {
            if (copy && *copy != standing.copy) continue;
            out.push_back({standing.instance, standing.flipped, {}, word, word, standing.copy});
            if (!standing.copy.empty()) out.back().name += " at " + standing.copy;
        }
        if (!out.empty()) return out;
    }
    const std::vector<PartRef> all = all_parts(e, scope);
    for (const PartRef& ref : all)
        if (means(ref, word, copy)) out.push_back(ref);
    if (!out.empty() || e.parts_may_be_lost) return out;

    std::vector<PartRef> plain;
    for (const PartRef& ref : all)
        if (means(ref, word, std::nullopt)) plain.push_back(ref);
    if (!plain.empty() && copy) {
        const std::vector<std::string> known = copies_of(plain);
        findings::Finding& f =
            e.error("unknown-copy", name.span, "there is no `" + word + " at " + *copy + "`");
        if (const auto near = findings::near_word(*copy, known))
            f.mend = "did you mean `" + word + " at " + *near + "`?";
        else if (known.empty())
            f.mend = "`" + word + "` stands once only; write `" + word + "`";
        else
            f.mend = "its copies are " + listed(known);
        return out;
    }
    if (scope.part_names.contains(word)) return out; // declared, but its copies are faulty
    std::vector<std::string> known;
    for (const auto& [part, span] : scope.part_names) known.push_back(part);
    for (const PartRef& ref : all)
        if (!ref.path.empty()) known.push_back(ref.base);
    findings::Finding& f = e.error("unknown-part", name.span, "there is no part `" + word + "`");
    std::sort(known.begin(), known.end());
    known.erase(std::unique(known.begin(), known.end()), known.end());
    if (const auto near = findings::near_word(word, known))
        f.mend = "did you mean `" + *near + "`?";
    else if (!word.empty() && word.back() == 's' &&
             std::binary_search(known.begin(), known.end(), word.substr(0, word.size() - 1)))
        f.mend = "write the part's own name: `" + word.substr(0, word.size() - 1) + "`";
    else if (!known.empty())
        f.mend = "parts here: " + listed(known);
    return out;
}

std::optional<PartRef> part_named(Elaboration& e, Scope& scope, const syntax::PartName& name,
                                  const Instance* self) {
    std::vector<PartRef> refs = parts_named(e, scope, name);
    if (refs.empty()) return std::nullopt;
    if (self && !name.copy && !self->copy.empty())
        for (PartRef& ref : refs)
            if (ref.copy == self->copy) return ref;
    return refs.front();
}

} // namespace rayfleck::piece
