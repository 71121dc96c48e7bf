using FsCheck.Xunit;
using RoutingRules.Reports.Sheets.Pages;

namespace RoutingRules.Tests.Reports.Sheets;

public sealed class FormulaGuardTests
{
    [Theory]
    [InlineData("=1+1", "'=1+1")]
    [InlineData("+47 line", "'+47 line")]
    [InlineData("-", "'-")]
    [InlineData("@home", "'@home")]
    [InlineData("\tx", "'\tx")]
    [InlineData("'=x", "''=x")]
    [InlineData("\uff1dx", "'\uff1dx")]
    [InlineData("'Round midnight", "'Round midnight")]
    [InlineData("Kick", "Kick")]
    [InlineData("", "")]
    public void Only_what_could_be_a_formula_gets_an_apostrophe(string text, string expected) => Assert.Equal(expected, FormulaGuard.Neutralise(text));

    [Property]
    public bool Any_text_comes_back_as_it_was(string? text) => FormulaGuard.Restore(FormulaGuard.Neutralise(text ?? "")) == (text ?? "");

    [Property]
    public bool Dangerous_beginnings_come_back_as_they_were(FsCheck.NonNegativeInt apostrophes, char first, string? rest)
    {
        foreach (var start in new[] { '=', '+', '-', '@', '\t', '\r', first })
        {
            var text = new string('\'', apostrophes.Get % 4) + start + rest;
            var safe = FormulaGuard.Neutralise(text);
            if (FormulaGuard.Restore(safe) != text || "=+-@\t\r".Contains(safe[0], StringComparison.Ordinal))
            {
                return false;
            }
        }

        return true;
    }
}
