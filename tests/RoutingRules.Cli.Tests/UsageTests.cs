using RoutingRules.Cli.Tests.Rig;

namespace RoutingRules.Cli.Tests;

public sealed class UsageTests
{
    public static TheoryData<string> Commands =>
        [
            "check",
            "assign",
            "fix",
            "pin",
            "trace",
            "why",
            "compare",
            "changeover",
            "impact",
            "sheet",
            "export",
            "import",
            "new",
            "upgrade",
            "plugins",
            "rules",
            "profiles",
            "schemas",
        ];

    [Fact]
    public void Root_help_lists_commands_exit_codes_and_the_caution()
    {
        var result = Tool.Run("--help").Civil();

        Assert.Equal(0, result.Code);
        Assert.Equal("", result.Error);
        foreach (var command in Commands)
        {
            Assert.Contains($"\n  {(string)command} ", result.Out, StringComparison.Ordinal);
        }

        Assert.Contains("  0  clean\n", result.Out, StringComparison.Ordinal);
        Assert.Contains("2 wins over 1, 1 over 3, and 3 over 0", result.Out, StringComparison.Ordinal);
        Assert.Contains("turn down the amplifiers", result.Out, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Commands))]
    public void Each_command_says_what_it_is_for_and_gives_an_example(string command)
    {
        foreach (var help in new[] { "--help", "-h" })
        {
            var result = Tool.Run(command, help).Civil();

            Assert.Equal(0, result.Code);
            Assert.Contains($"Usage\n  routing-rules {command}", result.Out, StringComparison.Ordinal);
            Assert.Contains($"Examples\n  routing-rules {command}", result.Out, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void No_command_at_all_shows_the_help_as_a_message()
    {
        var result = Tool.Run().Civil();

        Assert.Equal(2, result.Code);
        Assert.Equal("", result.Out);
        Assert.Contains("Exit codes", result.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("chekc", "there is no command 'chekc'")]
    [InlineData("check", "PATH")]
    [InlineData("check --quite a", "there is no option '--quite'")]
    [InlineData("check a --format xml", "'xml' is no format")]
    [InlineData("check a --report json", "FORMAT=FILE")]
    [InlineData("check a --report pdf=x", "FORMAT=FILE")]
    [InlineData("check a --report =x", "FORMAT=FILE")]
    [InlineData("check - -", "named twice")]
    [InlineData("assign", "FILE")]
    [InlineData("assign a b", "'b'")]
    [InlineData("assign a --spares many", "--spares takes a whole number from 0 to 65535, not 'many'")]
    [InlineData("assign a --spares 65536", "0 to 65535")]
    [InlineData("assign a --spares -1", "0 to 65535")]
    [InlineData("assign a --budget 0", "1 to 9007199254740991")]
    [InlineData("assign a --headroom 1.5", "0 to 65535")]
    [InlineData("trace a", "POINT")]
    [InlineData("sheet", "FILE")]
    [InlineData("schemas", "FOLDER")]
    [InlineData("check a --profiles /nowhere/at/all", "--profiles")]
    [InlineData("check a --config /nowhere/at/all", "no such file")]
    public void Wrong_usage_ends_with_2_and_says_what_is_wrong(string line, string expected)
    {
        var result = Tool.Run(line.Split(' ')).Civil();

        Assert.Equal(2, result.Code);
        Assert.Equal("", result.Out);
        Assert.Contains(expected, result.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_may_be_called_like_a_response_file_or_a_directive()
    {
        using var folder = new TempFolder();
        foreach (var name in new[] { "@a.show.json", "[parse].show.json" })
        {
            folder.Write(name, Shows.Small);
        }

        var here = Environment.CurrentDirectory;
        var result = Tool.Run("check", Path.GetRelativePath(here, folder.At("@a.show.json")), folder.At("[parse].show.json"));
        Assert.Contains("2 documents", result.Out, StringComparison.Ordinal);
        Assert.Contains("0 unreadable", result.Out, StringComparison.Ordinal);
        Assert.Contains("There is no such file.", Tool.Run("check", "@none").Civil().Out, StringComparison.Ordinal);
    }

    [Fact]
    public void The_version_is_one_line()
    {
        var result = Tool.Run("--version").Civil();

        Assert.Equal(0, result.Code);
        Assert.Matches("^[0-9]+\\.[0-9]+\\.[0-9]+[^\n]*\n$", result.Out);
    }
}
