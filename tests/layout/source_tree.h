// The tree as the layout tests read it: files with their lines, their includes, and their code
// parted from their comments and literals, so that a rule about code is not tripped by a sentence.
#pragma once

#include <algorithm>
#include <cctype>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <regex>
#include <string>
#include <string_view>
#include <vector>

namespace combwright::layout {

/// A file of the tree; the path counts from the root: "core/units/mass.h".
struct SourceFile {
    std::string path;
    std::string text;

    bool isHeader() const { return path.ends_with(".h"); }
    bool isCpp() const { return isHeader() || path.ends_with(".cpp"); }
    bool isUnder(std::string_view folder) const {
        return path.starts_with(folder) && path.size() > folder.size() &&
               path[folder.size()] == '/';
    }
};

/// Every regular file under these folders, in the order of their paths.
inline std::vector<SourceFile> filesUnder(const std::vector<std::string>& folders) {
    namespace fs = std::filesystem;
    const fs::path root = COMBWRIGHT_SOURCE_DIR;
    std::vector<std::string> paths;
    for (const std::string& folder : folders)
        for (const auto& entry : fs::recursive_directory_iterator(root / folder))
            if (entry.is_regular_file())
                paths.push_back(fs::relative(entry.path(), root).generic_string());
    std::sort(paths.begin(), paths.end());
    std::vector<SourceFile> files;
    for (const std::string& path : paths) {
        std::ifstream in(root / path, std::ios::binary);
        files.push_back({path, {std::istreambuf_iterator<char>(in), {}}});
    }
    return files;
}

/// The C++ files of the program itself.
inline std::vector<SourceFile> programSources() {
    std::vector<SourceFile> files = filesUnder({"core", "ui", "app"});
    std::erase_if(files, [](const SourceFile& file) { return !file.isCpp(); });
    return files;
}

struct Include {
    std::size_t line = 0;
    std::string name;
    bool angled = false;
};

inline std::vector<std::string> linesOf(const std::string& text) {
    std::vector<std::string> lines;
    std::size_t from = 0;
    while (from < text.size()) {
        const std::size_t end = std::min(text.find('\n', from), text.size());
        lines.push_back(text.substr(from, end - from));
        from = end + 1;
    }
    return lines;
}

inline std::vector<Include> includesOf(const SourceFile& file) {
    static const std::regex pattern(R"(^\s*#\s*include\s*([<"])([^>"]+)[>"].*)");
    std::vector<Include> found;
    const std::vector<std::string> lines = linesOf(file.text);
    std::smatch match;
    for (std::size_t i = 0; i < lines.size(); ++i)
        if (std::regex_match(lines[i], match, pattern))
            found.push_back({i + 1, match[2], match[1] == "<"});
    return found;
}

struct Literal {
    std::size_t line = 0;
    std::string text;
};

/// A file's code with comments gone and literals emptied, line for line as it was.
struct SplitSource {
    std::string code;
    std::vector<Literal> literals;
};

/// Reads C++ far enough to tell code, comments and literals apart.
class SourceSplitter {
  public:
    explicit SourceSplitter(const std::string& text) : m_text(text) {}

    SplitSource split() {
        while (m_at < m_text.size()) {
            if (ahead("//"))
                skipTo("\n");
            else if (ahead("/*"))
                skipTo("*/"), m_at = std::min(m_at + 2, m_text.size());
            else if (ahead("R\"") && !partOfName(m_at))
                rawLiteral();
            else if (m_text[m_at] == '"' || (m_text[m_at] == '\'' && !partOfName(m_at)))
                literal(m_text[m_at]);
            else
                keep(m_text[m_at++]);
        }
        return std::move(m_result);
    }

  private:
    bool ahead(std::string_view what) const { return m_text.compare(m_at, what.size(), what) == 0; }
    /// A quote behind a letter or digit parts the digits of a number; an R there ends a name.
    bool partOfName(std::size_t at) const {
        return at > 0 &&
               (std::isalnum(static_cast<unsigned char>(m_text[at - 1])) || m_text[at - 1] == '_');
    }
    void keep(char c) {
        m_result.code += c;
        if (c == '\n') ++m_line;
    }
    void skipTo(std::string_view end) {
        const std::size_t stop = std::min(m_text.find(end, m_at), m_text.size());
        for (; m_at < stop; ++m_at)
            if (m_text[m_at] == '\n') keep('\n');
    }
    void literal(char quote) {
        Literal found{m_line, {}};
        keep(m_text[m_at++]);
        for (; m_at < m_text.size() && m_text[m_at] != quote && m_text[m_at] != '\n'; ++m_at) {
            if (m_text[m_at] == '\\' && m_at + 1 < m_text.size()) found.text += m_text[m_at++];
            found.text += m_text[m_at];
        }
        if (m_at < m_text.size()) keep(m_text[m_at++]);
        if (quote == '"') m_result.literals.push_back(found);
    }
    void rawLiteral() {
        const std::size_t open = m_text.find('(', m_at);
        if (open == std::string::npos) return keep(m_text[m_at++]);
        const std::string end = ")" + m_text.substr(m_at + 2, open - m_at - 2) + "\"";
        const std::size_t stop = std::min(m_text.find(end, open), m_text.size());
        m_result.literals.push_back({m_line, m_text.substr(open + 1, stop - open - 1)});
        m_result.code += "\"\"";
        m_at = open;
        skipTo(end);
        m_at = std::min(m_at + end.size(), m_text.size());
    }

    const std::string& m_text;
    std::size_t m_at = 0;
    std::size_t m_line = 1;
    SplitSource m_result;
};

inline SplitSource split(const SourceFile& file) { return SourceSplitter(file.text).split(); }

/// "core/a.h:12: …", the form editors jump to.
inline std::string complaint(const SourceFile& file, std::size_t line, const std::string& what) {
    return file.path + ":" + std::to_string(line) + ": " + what + "\n";
}

}  // namespace combwright::layout
