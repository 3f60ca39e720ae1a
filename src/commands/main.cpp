// The program `rayfleck`.

#include "commands/run.hpp"

int main(int count, char** words) {
    return static_cast<int>(
        rayfleck::commands::run(std::vector<std::string>(words + (count > 0), words + count)));
}
