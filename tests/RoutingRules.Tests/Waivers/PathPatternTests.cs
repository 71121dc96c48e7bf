using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using RoutingRules.Waivers;

namespace RoutingRules.Tests.Waivers;

public sealed class PathPatternTests
{
    [Theory]
    [InlineData("**", "a.show.json", true)]
    [InlineData("**", "x/y/a.show.json", true)]
    [InlineData("*", "a.show.json", true)]
    [InlineData("*", "x/a.show.json", false)]
    [InlineData("*.show.json", "a.show.json", true)]
    [InlineData("*.show.json", "a.show.jsonx", false)]
    [InlineData("x/*", "x/a", true)]
    [InlineData("x/*", "x/y/a", false)]
    [InlineData("x/**", "x/y/a", true)]
    [InlineData("x/**", "xy/a", false)]
    [InlineData("**/a", "a", true)]
    [InlineData("**/a", "x/y/a", true)]
    [InlineData("**/a", "ba", false)]
    [InlineData("x/**/a", "x/a", true)]
    [InlineData("x/**/a", "x/y/z/a", true)]
    [InlineData("x/**/a", "xa", false)]
    [InlineData("a?c", "abc", true)]
    [InlineData("a?c", "a/c", false)]
    [InlineData("a?c", "ac", false)]
    [InlineData("A", "a", false)]
    [InlineData("a.c", "abc", false)]
    [InlineData("", "", true)]
    [InlineData("", "a", false)]
    [InlineData("../b/*", "../b/a", true)]
    public void A_pattern_fits_as_written(string pattern, string path, bool expected) => Assert.Equal(expected, PathPattern.IsMatch(pattern, path));

    /// <summary>Against plain recursion over all ways to read the pattern.</summary>
    [Property(MaxTest = 2000)]
    public Property The_table_agrees_with_trying_every_way()
    {
        var texts = Gen.Elements("a", "b", "/", "*", "**", "?").ListOf(7).Select(string.Concat);
        var paths = Gen.Elements("a", "b", "/").ListOf(6).Select(string.Concat);
        return Prop.ForAll(Arb.From(texts), Arb.From(paths), (pattern, path) => PathPattern.IsMatch(pattern, path) == Tried(pattern, path, atStart: true));
    }

    [Fact]
    public void No_pattern_is_slow()
    {
        // Backtracking would need more steps here than there are atoms in a stage.
        Assert.False(PathPattern.IsMatch(string.Concat(Enumerable.Repeat("*a", 60)), new string('a', 2000) + "b"));
    }

    [Theory]
    [InlineData(@"shows\a", "'/'")]
    [InlineData("/home/a", "relative")]
    [InlineData("./a", "'./'")]
    [InlineData("a//b", "'//'")]
    [InlineData("a/", "'/**'")]
    public void A_pattern_that_can_never_fit_is_told(string pattern, string expected) =>
        Assert.Contains(expected, PathPattern.Problem(pattern), StringComparison.Ordinal);

    private static bool Tried(string pattern, string path, bool atStart)
    {
        if (pattern.Length == 0)
        {
            return path.Length == 0;
        }

        if (pattern.StartsWith("**", StringComparison.Ordinal))
        {
            var rest = pattern[2..];
            return (atStart && rest.StartsWith('/') && Tried(rest[1..], path, true))
                || Enumerable.Range(0, path.Length + 1).Any(taken => Tried(rest, path[taken..], false));
        }

        if (pattern[0] == '*')
        {
            return Enumerable
                .Range(0, path.Length + 1)
                .TakeWhile(taken => !path[..taken].Contains('/', StringComparison.Ordinal))
                .Any(taken => Tried(pattern[1..], path[taken..], false));
        }

        return path.Length > 0 && (pattern[0] == path[0] || (pattern[0] == '?' && path[0] != '/')) && Tried(pattern[1..], path[1..], pattern[0] == '/');
    }
}
