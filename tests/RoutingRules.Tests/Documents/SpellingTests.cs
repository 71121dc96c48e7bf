using RoutingRules.Documents.Tables;

namespace RoutingRules.Tests.Documents;

public class SpellingTests
{
    [Theory]
    [InlineData("desk", "desk", 0)]
    [InlineData("dask", "desk", 1)]
    [InlineData("Desk", "desk", 0)]
    [InlineData("box", "box-r", 2)]
    [InlineData("kitten", "sitting", 3)]
    [InlineData("", "ab", 2)]
    [InlineData("abcd", "bacd", 1)]
    [InlineData("abcd", "badc", 2)]
    public void Letters_to_change_are_counted(string from, string to, int expected)
    {
        Assert.Equal(expected, Spelling.Edits(from, to));
        Assert.Equal(expected, Spelling.Edits(to, from));
    }

    [Fact]
    public void A_name_that_shares_no_letter_is_not_offered() => Assert.Null(Spelling.Nearest("ab", ["xy"]));

    [Fact]
    public void Of_two_names_equally_near_the_first_is_offered() => Assert.Equal("box-2", Spelling.Nearest("box-3", ["box-2", "box-1"]));

    [Theory]
    [InlineData("amp-sr", "amp-r")]
    [InlineData("amp-sr", "amp-sl")]
    [InlineData("main-left", "main-l2ft-r")]
    [InlineData("box-l", "box-r")]
    public void Nothing_on_another_side_is_offered(string word, string known) => Assert.Null(Spelling.Nearest(word, [known]));

    [Theory]
    [InlineData("amp-srr", "amp-sr")]
    [InlineData("anp-sr", "amp-sr")]
    [InlineData("amp sr", "amp-sr")]
    [InlineData("house-lefd", "house-left")]
    public void What_is_on_the_same_side_or_on_none_is_offered(string word, string known) => Assert.Equal(known, Spelling.Nearest(word, [known]));
}
