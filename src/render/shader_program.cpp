#include "render/shader_program.hpp"

#include <fmt/format.h>

#include <fstream>
#include <glm/gtc/type_ptr.hpp>
#include <sstream>
#include <vector>

namespace gangway::render {

namespace {

std::expected<std::string, std::string> readText(const std::filesystem::path& file) {
    std::ifstream in(file, std::ios::binary);
    if (!in || std::filesystem::is_directory(file))
        return std::unexpected(
            fmt::format("cannot read the shader {}; the program's shaders folder must be complete "
                        "(GANGWAY_SHADERS points to another one)",
                        file.string()));
    std::ostringstream text;
    text << in.rdbuf();
    return text.str();
}

/// The text of a shader with its includes in place. `#line` keeps the compiler's line numbers those
/// of the file that was named, so that its log can be followed.
std::expected<std::string, std::string> assemble(const std::filesystem::path& folder, const std::string& name,
                                                 const std::string& defines) {
    auto text = readText(folder / name);
    if (!text) return text;
    std::istringstream lines(*text);
    std::string result;
    std::string line;
    for (int number = 1; std::getline(lines, line); ++number) {
        const std::string include = "#include \"";
        if (line.starts_with("#version")) {
            result += line + "\n" + defines + fmt::format("#line {}\n", number + 1);
        } else if (line.starts_with(include)) {
            const auto end = line.find('"', include.size());
            auto part = assemble(folder, line.substr(include.size(), end - include.size()), {});
            if (!part) return part;
            result += *part + fmt::format("#line {}\n", number + 1);
        } else {
            result += line + "\n";
        }
    }
    return result;
}

std::expected<GLuint, std::string> compile(const std::filesystem::path& folder, const std::string& name,
                                           const std::string& defines, GLenum stage) {
    const auto text = assemble(folder, name, defines);
    if (!text) return std::unexpected(text.error());
    const GLuint shader = glCreateShader(stage);
    const char* source = text->c_str();
    glShaderSource(shader, 1, &source, nullptr);
    glCompileShader(shader);
    GLint good = GL_FALSE;
    glGetShaderiv(shader, GL_COMPILE_STATUS, &good);
    if (good == GL_TRUE) return shader;
    GLint length = 0;
    glGetShaderiv(shader, GL_INFO_LOG_LENGTH, &length);
    std::vector<char> log(static_cast<std::size_t>(length) + 1, '\0');
    glGetShaderInfoLog(shader, length, nullptr, log.data());
    glDeleteShader(shader);
    return std::unexpected(
        fmt::format("the shader {} does not compile: {}", (folder / name).string(), log.data()));
}

} // namespace

std::expected<ShaderProgram, std::string> ShaderProgram::load(const std::filesystem::path& folder,
                                                              const std::string& vertex_file,
                                                              const std::string& fragment_file,
                                                              const std::string& defines) {
    const auto vertex = compile(folder, vertex_file, defines, GL_VERTEX_SHADER);
    if (!vertex) return std::unexpected(vertex.error());
    const auto fragment = compile(folder, fragment_file, defines, GL_FRAGMENT_SHADER);
    if (!fragment) {
        glDeleteShader(*vertex);
        return std::unexpected(fragment.error());
    }
    ShaderProgram result;
    result.program_ = ProgramName::make();
    const GLuint program = result.program_.name();
    for (const GLuint shader : {*vertex, *fragment}) {
        glAttachShader(program, shader);
        glDeleteShader(shader); // freed with the program
    }
    glLinkProgram(program);
    GLint good = GL_FALSE;
    glGetProgramiv(program, GL_LINK_STATUS, &good);
    if (good == GL_TRUE) return result;
    GLint length = 0;
    glGetProgramiv(program, GL_INFO_LOG_LENGTH, &length);
    std::vector<char> log(static_cast<std::size_t>(length) + 1, '\0');
    glGetProgramInfoLog(program, length, nullptr, log.data());
    return std::unexpected(fmt::format("the shaders {} and {} do not link: {}",
                                       (folder / vertex_file).string(), (folder / fragment_file).string(),
                                       log.data()));
}

void ShaderProgram::use() const {
    glUseProgram(program_.name());
}

GLint ShaderProgram::location(const std::string& uniform) {
    const auto found = locations_.find(uniform);
    if (found != locations_.end()) return found->second;
    const GLint at = glGetUniformLocation(program_.name(), uniform.c_str());
    locations_.emplace(uniform, at);
    return at;
}

void ShaderProgram::set(const std::string& uniform, int value) {
    glUniform1i(location(uniform), value);
}
void ShaderProgram::set(const std::string& uniform, float value) {
    glUniform1f(location(uniform), value);
}
void ShaderProgram::set(const std::string& uniform, glm::ivec2 value) {
    glUniform2iv(location(uniform), 1, glm::value_ptr(value));
}
void ShaderProgram::set(const std::string& uniform, glm::vec2 value) {
    glUniform2fv(location(uniform), 1, glm::value_ptr(value));
}
void ShaderProgram::set(const std::string& uniform, glm::vec3 value) {
    glUniform3fv(location(uniform), 1, glm::value_ptr(value));
}
void ShaderProgram::set(const std::string& uniform, glm::vec4 value) {
    glUniform4fv(location(uniform), 1, glm::value_ptr(value));
}
void ShaderProgram::set(const std::string& uniform, const glm::mat3& value) {
    glUniformMatrix3fv(location(uniform), 1, GL_FALSE, glm::value_ptr(value));
}
void ShaderProgram::set(const std::string& uniform, const glm::mat4& value) {
    glUniformMatrix4fv(location(uniform), 1, GL_FALSE, glm::value_ptr(value));
}

} // namespace gangway::render
