using RoutingRules.Cli.Tests.Rig;

namespace RoutingRules.Cli.Tests.Commands;

public sealed class SheetCommandTests : IDisposable
{
    private readonly TempFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Theory]
    [InlineData("text", "Small")]
    [InlineData("markdown", "# ")]
    [InlineData("html", "<!DOCTYPE html>")]
    [InlineData("svg", "<svg xmlns=")]
    public void Each_format_goes_to_standard_output_or_to_a_file_alike(string format, string expected)
    {
        var path = folder.Write("a.show.json", Shows.Small);
        var printed = Tool.Run("sheet", path, "--format", format).Civil();
        var written = Tool.Run("sheet", path, "--format", format, "--out", folder.At("sheet")).Civil();

        Assert.Equal(0, printed.Code);
        Assert.Equal("", printed.Error);
        Assert.Contains(expected, printed.Out, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("Monitor", printed.Out, StringComparison.Ordinal);
        Assert.DoesNotContain('\r', printed.Out);
        Assert.Equal(0, written.Code);
        Assert.Equal("", written.Out);
        Assert.Equal(printed.OutBytes, File.ReadAllBytes(folder.At("sheet")));
    }

    [Fact]
    public void One_device_can_be_asked_for()
    {
        var path = folder.Write("a.show.json", Shows.Small);
        var all = Tool.Run("sheet", path).Civil();
        var one = Tool.Run("sheet", path, "--device", "box").Civil();

        Assert.Equal(0, one.Code);
        Assert.True(one.Out.Length < all.Out.Length);
    }

    [Fact]
    public void A_device_that_is_not_there_is_wrong_usage_and_writes_nothing()
    {
        var path = folder.Write("a.show.json", Shows.Small);
        var result = Tool.Run("sheet", path, "--device", "bux", "--out", folder.At("sheet")).Civil();

        Assert.Equal(2, result.Code);
        Assert.Contains("no device 'bux'; it has desk, box", result.Error, StringComparison.Ordinal);
        Assert.Equal(["a.show.json"], folder.Names);
    }

    [Fact]
    public void A_show_that_cannot_be_read_gives_no_sheet()
    {
        var path = folder.Write("a.show.json", "{");
        var result = Tool.Run("sheet", path, "--out", folder.At("sheet")).Civil();

        Assert.Equal(2, result.Code);
        Assert.Contains("RR1001", result.Error, StringComparison.Ordinal);
        Assert.Equal(["a.show.json"], folder.Names);
    }

    [Theory]
    [InlineData("--format", "pdf", "text or markdown or html")]
    [InlineData("--format", "pdf", "svg or csv or xlsx, not 'pdf'")]
    [InlineData("--view", "left", "house or stage")]
    [InlineData("--side", "left", "house-left or house-right or centre or stage-left or stage-right, not 'left'")]
    [InlineData("--part", "drums", "overview or flow or inputs or outputs or devices or lines or walk or mixes or packs or network")]
    [InlineData("--list", "drums", "inputs or outputs or walk or mixes or packs or streams or links or gaps or changes")]
    [InlineData("--list", "outputs", "give --format csv as well")]
    [InlineData("--zone", "up", "the rig has no zone 'up'; it has none")]
    [InlineData("--side", "centre", "no device stands in centre; there are none")]
    [InlineData("--blank-rows", "41", "--blank-rows takes a whole number from 0 to 40")]
    public void An_unknown_word_is_wrong_usage(string option, string word, string expected)
    {
        var result = Tool.Run("sheet", folder.Write("a.show.json", Shows.Small), option, word).Civil();

        Assert.Equal(2, result.Code);
        Assert.Contains(expected, result.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_list_is_written_as_csv_and_all_lists_as_a_workbook()
    {
        var path = folder.Write("a.show.json", Shows.Small);
        var csv = Tool.Run("sheet", path, "--format", "csv", "--list", "outputs");
        var book = Tool.Run("sheet", path, "--format", "xlsx", "--out", folder.At("a.xlsx")).Civil();

        Assert.Equal(0, csv.Code);
        Assert.StartsWith("Device,Device id,", csv.Out, StringComparison.Ordinal);
        Assert.Contains("box,box,,out,1,,,Monitor,monitor,desk aux 1,", csv.Out, StringComparison.Ordinal);
        Assert.Equal(0, book.Code);
        Assert.Equal("PK"u8.ToArray(), File.ReadAllBytes(folder.At("a.xlsx"))[..2]);
    }

    [Fact]
    public void What_changed_since_an_older_revision_is_marked()
    {
        var path = folder.Write("new.show.json", Shows.Small);
        var old = folder.Write("old.show.json", Shows.Small.Replace("\"Monitor\"", "\"Wedge\"", StringComparison.Ordinal));
        var result = Tool.Run("sheet", path, "--since", old).Civil();

        Assert.Equal(0, result.Code);
        Assert.Contains(">> CHANGED, was: Wedge", result.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("{", "RR1001")]
    [InlineData(null, "old.show.json")]
    public void An_older_revision_that_cannot_be_read_gives_no_sheet(string? text, string expected)
    {
        var path = folder.Write("a.show.json", Shows.Small);
        var old = text is null ? folder.At("old.show.json") : folder.Write("old.show.json", text);
        var before = folder.Names;
        var result = Tool.Run("sheet", path, "--since", old, "--out", folder.At("sheet")).Civil();

        Assert.Equal(2, result.Code);
        Assert.Contains(expected, result.Error, StringComparison.Ordinal);
        Assert.Equal(before, folder.Names);
    }

    [Fact]
    public void The_older_revision_is_never_overwritten()
    {
        var path = folder.Write("a.show.json", Shows.Small);
        var old = folder.Write("old.show.json", Shows.Small);
        var result = Tool.Run("sheet", path, "--since", old, "--out", old).Civil();

        Assert.Equal(2, result.Code);
        Assert.Equal(Shows.Small, File.ReadAllText(old));
    }

    [Fact]
    public void Parts_can_be_asked_for_one_by_one()
    {
        var path = folder.Write("a.show.json", Shows.Small);
        var result = Tool.Run("sheet", path, "--part", "mixes", "--part", "network").Civil();

        Assert.Equal(0, result.Code);
        Assert.Contains("Output check", result.Out, StringComparison.Ordinal);
        Assert.Contains("Network audio", result.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("Overview", result.Out, StringComparison.Ordinal);
    }
}
