using System.Text;
using RoutingRules.Cli.Tests.Rig;
using RoutingRules.Reading;
using RoutingRules.Schema;

namespace RoutingRules.Cli.Tests.Commands;

public sealed class NewCommandTests : IDisposable
{
    private readonly TempFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void The_new_show_checks_clean_without_so_much_as_a_note()
    {
        var show = Tool.Run("new").Civil();
        var check = Tool.Run(["check", "-"], show.OutBytes).Civil();

        Assert.Equal(0, show.Code);
        Assert.StartsWith("standard input: clean. ", check.Out, StringComparison.Ordinal);
        Assert.Equal(0, check.Code);
        Assert.Empty(SchemaValidator.Validate(SchemaKind.Show, show.OutBytes));
    }

    [Fact]
    public void Assigning_the_new_show_keeps_every_place()
    {
        var result = Tool.Run(["assign", "-", "--out", folder.At("o.show.json")], Tool.Run("new").OutBytes).Civil();

        Assert.True(result.Code == 0, result.Out);
        Assert.Equal(7, result.Out.Split('\n').Count(line => line.EndsWith("  as before", StringComparison.Ordinal)));
        Assert.DoesNotContain("Moved", result.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Harbour fete")]
    [InlineData("Fest \"på\" Øya \\ {0} </script>")]
    [InlineData("\U0001F3B8")]
    public void The_title_is_kept_as_given(string title)
    {
        var path = folder.At("n.show.json");
        var result = Tool.Run("new", "--title", title, "--out", path).Civil();

        Assert.Equal(0, result.Code);
        Assert.Equal("", result.Out);
        Assert.Equal(title, ShowReader.ReadFile(path).Value!.Title);
    }

    [Fact]
    public void A_file_that_is_there_is_never_replaced()
    {
        var path = folder.Write("n.show.json", "mine");
        var result = Tool.Run("new", "--out", path).Civil();

        Assert.Equal(2, result.Code);
        Assert.Contains("is there already", result.Error, StringComparison.Ordinal);
        Assert.Equal("mine", File.ReadAllText(path));
        Assert.Equal(["n.show.json"], folder.Names);
    }

    [Fact]
    public void A_title_that_a_document_cannot_hold_is_wrong_usage()
    {
        // No theory: test runners pass their data as UTF-8, which mends half surrogate pairs.
        foreach (var title in new[] { "", "half \ud800", new string('x', 201) })
        {
            var result = Tool.Run("new", "--title", title).Civil();
            Assert.Equal(2, result.Code);
            Assert.Equal("", result.Out);
        }
    }

    [Fact]
    public void The_new_show_is_the_same_every_time() => Assert.Equal(Tool.Run("new").OutBytes, Tool.Run("new").OutBytes);

    [Fact]
    public void The_new_show_ends_with_one_line_break_and_holds_no_carriage_return()
    {
        var text = Encoding.UTF8.GetString(Tool.Run("new").OutBytes);

        Assert.EndsWith("}\n", text, StringComparison.Ordinal);
        Assert.DoesNotContain('\r', text);
    }
}
