using System.Text;
using RoutingRules.Documents.Archives;

namespace RoutingRules.Tests.External;

/// <summary>The check sum of archives against published values.</summary>
public sealed class CheckSumTests
{
    // "Check" value of CRC-32/ISO-HDLC: the sum of the nine digits (from memory). The other two are those of an empty text and of the pangram, common in
    // examples of CRC-32 (from memory).
    [Theory]
    [InlineData("123456789", 0xCBF43926)]
    [InlineData("", 0)]
    [InlineData("The quick brown fox jumps over the lazy dog", 0x414FA339)]
    public void The_sum_of_a_text_is_the_published_one(string text, uint sum) => Assert.Equal(sum, Crc32.Of(Encoding.ASCII.GetBytes(text)));
}
