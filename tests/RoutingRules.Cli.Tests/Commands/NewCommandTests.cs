using System.Text;
using RoutingRules.Cli.Tests.Rig;
using RoutingRules.Documents;
using RoutingRules.Documents.Formats;
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
        Assert.Equal(2, result.Out.Split('\n').Count(line => line.EndsWith("  fixed by the document", StringComparison.Ordinal)));
        Assert.Equal(5, result.Out.Split('\n').Count(line => line.EndsWith("  as before", StringComparison.Ordinal)));
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
    public void A_first_real_show_takes_one_command()
    {
        var path = folder.At("quay.show.json");
        var made = Tool.Run(
                "new",
                "--title",
                "Quay festival",
                "--console",
                "medium",
                "--monitor-console",
                "medium",
                "--box",
                "large@stage-right",
                "--box",
                "medium@stage-left",
                "--monitors",
                "4",
                "--in-ears",
                "4",
                "--vocals",
                "6",
                "--microphones",
                "10",
                "--direct-boxes",
                "4",
                "--stereo-lines",
                "2",
                "--subs",
                "1",
                "--out",
                path
            )
            .Civil();

        Assert.True(made.Code == 0, made.Error);
        Assert.Equal("", made.Error);
        Assert.Equal((11, 22), (ShowReader.ReadFile(path).Value!.Feeds.Count, ShowReader.ReadFile(path).Value!.Lines.Count));
        Assert.StartsWith(path + ": clean. ", Tool.Run("check", path).Civil().Out, StringComparison.Ordinal);
        var again = Tool.Run("assign", path, "--out", folder.At("again.show.json")).Civil();
        Assert.True(again.Code == 0, again.Out);
        Assert.DoesNotContain("Moved", again.Out, StringComparison.Ordinal);
        var sheet = Tool.Run("sheet", path).Civil();
        Assert.Equal(0, sheet.Code);
        Assert.Contains("Monitor 3", sheet.Out, StringComparison.Ordinal);
        Assert.Contains("VOCAL 6", sheet.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_patch_assign_makes_one()
    {
        var bare = Tool.Run("new", "--no-patch", "--boxes", "2", "--console", "medium", "--in-ears", "2").Civil();
        var result = Tool.Run(["assign", "-", "--out", folder.At("p.show.json")], bare.OutBytes).Civil();

        Assert.DoesNotContain("\"streams\"", bare.Out, StringComparison.Ordinal);
        Assert.True(result.Code == 0, result.Out);
        Assert.StartsWith(folder.At("p.show.json") + ": clean. ", Tool.Run("check", folder.At("p.show.json")).Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(
        "--monitors 9",
        "--monitors 9 is too many: the stage box has 8 outputs in all, and what comes before 'mon-7' takes 8. As the rest is, 6 fit: --monitors 6. "
            + "Room for all: --box large; or --boxes 2. Nothing was written."
    )]
    [InlineData(
        "--redundant",
        "--redundant cannot be had: a ring needs two network jacks at each device, and generic/console-small has one. Without it everything fits. "
            + "Room for all: --console medium."
    )]
    [InlineData("--monitors 99", "No size of consoles and boxes that was tried makes room for all; ask for less. Nothing was written.")]
    [InlineData("--monitors 100", "--monitors takes a whole number from 0 to 99, not '100'")]
    [InlineData("--in-ears -1", "--in-ears takes a whole number from 0 to 99, not '-1'")]
    [InlineData("--mains 4", "--mains takes a whole number from 0 to 3")]
    [InlineData("--boxes 0", "--boxes takes a whole number from 1 to 8")]
    [InlineData("--box huge", "--box takes a size")]
    [InlineData("--box small@moon", "--box takes a size")]
    [InlineData("--box small --box small --boxes 1", "--box is given 2 times, but --boxes says 1")]
    [InlineData("--console tiny", "--console takes small, medium, large")]
    [InlineData("--console crew/desk", "there is no profile 'crew/desk'")]
    public void What_does_not_fit_is_said_and_nothing_is_written(string options, string expected)
    {
        var path = folder.At("n.show.json");
        var result = Tool.Run(["new", "--out", path, .. options.Split(' ')]).Civil();

        Assert.Equal(2, result.Code);
        Assert.Contains(expected, result.Error, StringComparison.Ordinal);
        Assert.Empty(folder.Names);
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
