using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using RoutingRules.Cli.Tests.Rig;
using RoutingRules.Fixing;
using RoutingRules.Reading;
using RoutingRules.Schema;

namespace RoutingRules.Cli.Tests.Commands;

public sealed class FixCommandTests : IDisposable
{
    private const string Idle = "{ \"from\": null, \"to\": \"box/transmit/1\" }";

    /// <summary>The small show with a route that its box does not heed.</summary>
    private static readonly string Faulty = Shows.Small.Replace("\"desk/transmit/2-8\" }", "\"desk/transmit/2-8\" }, " + Idle, StringComparison.Ordinal);

    private static readonly string[] Only = ["--rule", "RR2010", "--no-config"];

    private readonly TempFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void The_mended_show_goes_to_standard_output_and_nothing_else_of_the_text_changes()
    {
        var path = folder.Write("a.show.json", Faulty);
        var result = Tool.Run(["fix", path, .. Only]).Civil();

        Assert.Equal(Shows.Small, result.Out);
        Assert.Contains("1 fix taken, 0 not", result.Error, StringComparison.Ordinal);
        Assert.Equal(Faulty, File.ReadAllText(path));
    }

    [Fact]
    public void The_exit_code_is_that_of_a_check_of_the_mended_show()
    {
        var path = folder.Write("a.show.json", Faulty);
        var mended = folder.Write("b.show.json", Shows.Small);
        Assert.Equal(Tool.Run("check", mended, "--no-config").Code, Tool.Run(["fix", path, .. Only]).Code);
    }

    [Fact]
    public void A_dry_run_says_what_would_change_and_writes_nothing()
    {
        var path = folder.Write("a.show.json", Faulty);
        var result = Tool.Run(["fix", path, "--dry-run", .. Only]).Civil();

        Assert.Contains("1 fix would be taken", result.Out, StringComparison.Ordinal);
        Assert.Contains("1. Take out the route to box/transmit/1, which has no effect (RR2010, safe)\n", result.Out, StringComparison.Ordinal);
        Assert.Contains($"   take out /patch/routes/2: {Idle}\n", result.Out, StringComparison.Ordinal);
        Assert.Contains("\"op\": \"remove\"", result.Out, StringComparison.Ordinal);
        Assert.Equal(Faulty, File.ReadAllText(path));
        Assert.Equal(["a.show.json"], folder.Names);
    }

    [Fact]
    public void In_place_is_asked_for_by_name_and_mends_the_file()
    {
        var path = folder.Write("a.show.json", Faulty);
        Tool.Run(["fix", path, "--in-place", .. Only]).Civil();
        Assert.Equal(Shows.Small, File.ReadAllText(path));
        Assert.Equal(["a.show.json"], folder.Names);
    }

    [Fact]
    public void With_out_the_show_goes_to_the_file_and_the_patch_mends_the_document_as_well()
    {
        var path = folder.Write("a.show.json", Faulty);
        var result = Tool.Run(["fix", path, "--out", folder.At("b.show.json"), "--format", "patch", .. Only]).Civil();

        Assert.Equal(Shows.Small, File.ReadAllText(folder.At("b.show.json")));
        var patched = JsonPatch.Parse(result.OutBytes).Apply(JsonNode.Parse(Faulty));
        Assert.Equal(ShowReader.Read(Encoding.UTF8.GetBytes(Shows.Small)).Value, ShowReader.Read(Encoding.UTF8.GetBytes(patched!.ToJsonString())).Value);
    }

    [Fact]
    public void As_json_the_account_names_rule_title_safety_and_patch()
    {
        var path = folder.Write("a.show.json", Faulty);
        var root = JsonDocument.Parse(Tool.Run(["fix", path, "--dry-run", "--format", "json", .. Only]).Civil().OutBytes).RootElement;

        var applied = Assert.Single(root.GetProperty("applied").EnumerateArray());
        Assert.Equal("RR2010", applied.GetProperty("rule").GetString());
        Assert.Equal("safe", applied.GetProperty("safety").GetString());
        Assert.Equal(2, root.GetProperty("patch").GetArrayLength());
    }

    [Fact]
    public void A_show_with_nothing_to_mend_comes_out_byte_for_byte()
    {
        var path = folder.Write("a.show.json", Shows.Small);
        Assert.Equal(Shows.Small, Tool.Run(["fix", path, .. Only]).Civil().Out);
    }

    [Theory]
    [InlineData("--safe", "--unsafe", "cannot be had together")]
    [InlineData("--in-place", "--dry-run", "--dry-run writes no show")]
    [InlineData("--format", "patch", "--format is for the account")]
    [InlineData("--rule", "RR0000", "there is no rule 'RR0000'")]
    public void What_contradicts_itself_is_refused(string first, string second, string why)
    {
        var path = folder.Write("a.show.json", Faulty);
        var result = Tool.Run("fix", path, first, second).Civil();
        Assert.Equal(2, result.Code);
        Assert.Contains(why, result.Error, StringComparison.Ordinal);
        Assert.Equal("", result.Out);
    }

    [Fact]
    public void An_unreadable_show_is_not_mended()
    {
        var path = folder.Write("a.show.json", "{ \"schemaVersion\": 1 }");
        var result = Tool.Run("fix", path, "--in-place").Civil();
        Assert.Equal(2, result.Code);
        Assert.Contains("nothing was mended", result.Error, StringComparison.Ordinal);
        Assert.Equal("{ \"schemaVersion\": 1 }", File.ReadAllText(path));
    }

    [Fact]
    public void Check_offers_fixes_when_asked_and_the_report_meets_its_schema()
    {
        var path = folder.Write("a.show.json", Faulty);
        var result = Tool.Run("check", path, "--fixes", "--no-config", "--format", "json").Civil();

        Assert.Empty(SchemaValidator.Validate(SchemaKind.Report, result.OutBytes));
        Assert.Contains("\"title\": \"Take out the route to box/transmit/1, which has no effect\"", result.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("\"title\": \"Take out", Tool.Run("check", path, "--no-config", "--format", "json").Civil().Out, StringComparison.Ordinal);
    }
}
