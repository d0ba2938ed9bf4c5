// A linked shader program from two files of the shader folder, and its uniforms by name.
#pragma once

#include "render/gl_handles.hpp"

#include <glm/glm.hpp>

#include <expected>
#include <filesystem>
#include <map>
#include <string>

namespace gangway::render {

class ShaderProgram {
public:
    ShaderProgram() = default;
    /// Compiles and links. A line `#include "file"` in a shader is replaced by that file of the same
    /// folder; `defines` is put behind the #version line. The error names the file and carries the
    /// compiler's text.
    static std::expected<ShaderProgram, std::string> load(const std::filesystem::path& folder,
                                                          const std::string& vertex_file,
                                                          const std::string& fragment_file,
                                                          const std::string& defines = {});
    void use() const;
    /// Setting a uniform that the compiler removed does nothing. The program must be in use.
    void set(const std::string& uniform, int value);
    void set(const std::string& uniform, float value);
    void set(const std::string& uniform, glm::ivec2 value);
    void set(const std::string& uniform, glm::vec2 value);
    void set(const std::string& uniform, glm::vec3 value);
    void set(const std::string& uniform, glm::vec4 value);
    void set(const std::string& uniform, const glm::mat3& value);
    void set(const std::string& uniform, const glm::mat4& value);

private:
    GLint location(const std::string& uniform);

    ProgramName program_;
    std::map<std::string, GLint, std::less<>> locations_;
};

} // namespace gangway::render
