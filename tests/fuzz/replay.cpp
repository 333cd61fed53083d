// Gives every file of a corpus folder to the fuzz target that it is linked with, in any compiler.
//   replay_NAME FOLDER     exit 0 when the target came through all of them; 2 when there are none

#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

int main(int argc, char** argv) {
    if (argc != 2) {
        std::fprintf(stderr, "usage: %s CORPUS_FOLDER\n", argv[0]);
        return 2;
    }
    std::error_code no_folder;
    int inputs = 0;
    for (const auto& entry : std::filesystem::directory_iterator(argv[1], no_folder)) {
        std::printf("%s\n", entry.path().c_str());
        std::fflush(stdout); // the last line printed names the input that ended the program
        std::ifstream file(entry.path(), std::ios::binary);
        const std::string bytes{std::istreambuf_iterator<char>(file), {}};
        LLVMFuzzerTestOneInput(reinterpret_cast<const std::uint8_t*>(bytes.data()), bytes.size());
        ++inputs;
    }
    std::printf("%d inputs came through\n", inputs);
    return inputs > 0 ? 0 : 2;
}
