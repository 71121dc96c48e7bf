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
    [InlineData("--view", "left", "house or stage")]
    public void An_unknown_word_is_wrong_usage(string option, string word, string expected)
    {
        var result = Tool.Run("sheet", folder.Write("a.show.json", Shows.Small), option, word).Civil();

        Assert.Equal(2, result.Code);
        Assert.Contains(expected, result.Error, StringComparison.Ordinal);
    }
}
