using RoutingRules.Checking.Facts.Labels;

namespace RoutingRules.Tests.Checking.Rules.Labels;

/// <remarks>Extended grapheme clusters: Unicode UAX 29 (from memory); the clusters are counted by eye.</remarks>
public sealed class LabelTextTests
{
    [Theory]
    [InlineData("", 0)]
    [InlineData("KICK IN", 7)]
    [InlineData("Flöte", 5)]
    [InlineData("Flo\u0308te", 5)]
    [InlineData("VOX \U0001F3A4", 5)]
    [InlineData("\U0001F469\u200D\U0001F3A4 L", 3)]
    [InlineData("\U0001F1EE\U0001F1EA", 1)]
    public void Lengths_count_what_a_person_sees(string text, int expected) => Assert.Equal(expected, LabelText.Length(text));

    [Theory]
    [InlineData("KICK IN", 4, "KICK")]
    [InlineData("KICK", 4, "KICK")]
    [InlineData("Flo\u0308te", 3, "Flo\u0308")]
    [InlineData("\U0001F469\u200D\U0001F3A4 LEFT", 1, "\U0001F469\u200D\U0001F3A4")]
    public void Cutting_never_tears_a_character(string text, int length, string expected) => Assert.Equal(expected, LabelText.Cut(text, length));

    [Theory]
    [InlineData("kick in", "KICKIN")]
    [InlineData(" Kick\tIn ", "KICKIN")]
    [InlineData("Flöte", "FLÖTE")]
    public void Capitals_and_spaces_do_not_count(string text, string expected) => Assert.Equal(expected, LabelText.Normal(text));
}
