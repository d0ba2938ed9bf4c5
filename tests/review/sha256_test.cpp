// The example vectors that NIST publishes with FIPS 180-4 ("SHA Examples", SHA-256).
#include "review/review.hpp"

#include <catch2/catch.hpp>

using gangway::review::sha256;

TEST_CASE("SHA-256 gives the digests of the published examples") {
    CHECK(sha256("") == "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
    CHECK(sha256("abc") == "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    CHECK(sha256("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq") ==
          "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
    CHECK(sha256(std::string(1'000'000, 'a')) ==
          "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0");
}

TEST_CASE("SHA-256 takes bytes, not characters, and tells lengths about a block apart") {
    CHECK(sha256(std::string_view("\0", 1)) ==
          "6e340b9cffb37a989ca544e6bb780a2c78901d3fb33738768511a30617afa01d");
    // Padding has its corners where the length no longer fits the block: all digests must differ.
    std::string last;
    for (std::size_t length = 54; length <= 66; ++length) {
        const std::string digest = sha256(std::string(length, 'x'));
        CHECK(digest.size() == 64);
        CHECK(digest != last);
        last = digest;
    }
}
