using RoutingRules.Cli.Tests.Rig;

namespace RoutingRules.Cli.Tests.Commands;

public sealed class PinCommandTests : IDisposable
{
    private readonly TempFolder folder = new();

    private static string Club => File.ReadAllText(Repository.At("schema", "examples", "02-club-night.show.json"));

    public void Dispose() => folder.Dispose();

    [Fact]
    public void Places_that_were_open_are_named_and_the_rest_of_the_text_stays()
    {
        var path = folder.Write("a.show.json", Club);
        var result = Tool.Run("pin", path, "--no-config", "--out", folder.At("b.show.json")).Civil();

        Assert.Equal(0, result.Code);
        Assert.Contains("2 places pinned\n  mon-1/1 at wedge-1/in/1\n  mon-2/1 at wedge-2/in/1\n", result.Out, StringComparison.Ordinal);
        var pinned = File.ReadAllText(folder.At("b.show.json"));
        Assert.Contains("\"at\": \"wedge-1/in/1\"", pinned, StringComparison.Ordinal);
        Assert.Contains("{ \"id\": \"stage\", \"name\": \"Stage\", \"side\": \"centre\", \"walk\": 1 },", pinned, StringComparison.Ordinal);
        Assert.Equal(Club, File.ReadAllText(path));
    }

    [Fact]
    public void A_pinned_show_pinned_again_stays_byte_for_byte()
    {
        var path = folder.Write("a.show.json", Club);
        Assert.Equal(0, Tool.Run("pin", path, "--no-config", "--in-place").Civil().Code);
        var once = File.ReadAllText(path);

        var result = Tool.Run("pin", path, "--no-config").Civil();

        Assert.Equal(once, result.Out);
        Assert.Contains("0 places pinned", result.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_dry_run_writes_nothing_and_says_what_is_not_served()
    {
        var path = folder.Write("a.show.json", Club.Replace("{ \"from\": \"desk/aux/1-2\", \"to\": \"desk/transmit/3-4\" },", "", StringComparison.Ordinal));
        var before = File.ReadAllText(path);
        var result = Tool.Run("pin", path, "--no-config", "--dry-run").Civil();

        Assert.Equal(1, result.Code);
        Assert.Contains("0 places would be pinned, 2 not served and left open", result.Out, StringComparison.Ordinal);
        Assert.Contains("  mon-1/1 is not served; assign it first\n", result.Out, StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllText(path));
    }

    [Theory]
    [InlineData("--out", "b.show.json", "--in-place")]
    [InlineData("--dry-run", "--in-place")]
    public void Where_the_show_goes_is_said_once(params string[] arguments) =>
        Assert.Contains("exclude one another", Tool.Run(["pin", "a.show.json", .. arguments]).Civil().Error, StringComparison.Ordinal);

    [Fact]
    public void An_assigned_show_can_be_pinned_at_once()
    {
        var path = folder.Write("a.show.json", Club);
        var result = Tool.Run("assign", path, "--no-config", "--pin", "--out", folder.At("b.show.json")).Civil();

        Assert.Equal(0, result.Code);
        Assert.Contains("\"at\": \"wedge-2/in/1\"", File.ReadAllText(folder.At("b.show.json")), StringComparison.Ordinal);
    }

    [Fact]
    public void A_cause_is_mended_by_its_number()
    {
        var path = folder.Write("a.show.json", Club.Replace("\"from\": \"desk/aux/1-2\"", "\"from\": \"desk/aux/9-10\"", StringComparison.Ordinal));
        Assert.Contains(
            "1. Monitor singer and Monitor drums are taken 8 buses too high",
            Tool.Run("check", path, "--no-config").Civil().Out,
            StringComparison.Ordinal
        );

        var result = Tool.Run("fix", path, "--no-config", "--cause", "1").Civil();

        Assert.Equal(0, result.Code);
        Assert.Equal(Club, result.Out);
        Assert.Contains("there is no cause 2; check names one.", Tool.Run("fix", path, "--no-config", "--cause", "2").Civil().Error, StringComparison.Ordinal);
        Assert.Contains("leave --safe", Tool.Run("fix", path, "--no-config", "--cause", "1", "--unsafe").Civil().Error, StringComparison.Ordinal);
    }
}
