using FsCheck.Xunit;
using RoutingRules.Documents.Text;

namespace RoutingRules.Tests.Reports;

public sealed class PlainTextTests
{
    [Theory]
    [InlineData("Fest på Øya, 漢字 \"x\"", "Fest på Øya, 漢字 \"x\"")]
    [InlineData("a\u001b[2Jb", "a\\u001b[2Jb")]
    [InlineData("a\nb\tc\r", "a\\u000ab\\u0009c\\u000d")]
    [InlineData("\u202eabc\u2066", "\\u202eabc\\u2066")]
    [InlineData("\u009b31m", "\\u009b31m")]
    [InlineData("", "")]
    public void What_could_steer_a_terminal_is_written_out(string text, string shown) => Assert.Equal(shown, PlainText.Show(text));

    [Fact]
    public void Whole_surrogate_pairs_stay_and_halves_are_written_out() =>
        Assert.Equal("\U0001F3B8\\ud83c \\udfb8\\ud83c", PlainText.Show("\U0001F3B8\ud83c \udfb8\ud83c"));

    [Property]
    public bool No_control_character_survives(string? text)
    {
        var shown = PlainText.Show(text ?? "");
        return !shown.Any(char.IsControl) && PlainText.Show(shown) == shown;
    }
}
