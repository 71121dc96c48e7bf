using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using RoutingRules.Cli.Tests.Rig;
using RoutingRules.Documents;
using RoutingRules.Documents.Formats;
using RoutingRules.Fixing;
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

    [Theory]
    [InlineData("{ \"x\": \"\\ud800\" }")]
    [InlineData("{ \"x\": 1, \"x\": 2 }")]
    public void What_no_patch_carries_is_kept_and_a_patch_of_it_is_refused_with_the_reason(string extensions)
    {
        var odd = Faulty.Insert(Faulty.LastIndexOf('}'), $", \"extensions\": {extensions} ");
        var path = folder.Write("a.show.json", odd);
        var dry = Tool.Run(["fix", path, "--dry-run", .. Only]).Civil();
        var refused = Tool.Run(["fix", path, "--dry-run", "--format", "patch", .. Only]).Civil();

        Assert.Contains("1 fix would be taken", dry.Out, StringComparison.Ordinal);
        Assert.Contains("the change cannot be written as a patch:", dry.Out, StringComparison.Ordinal);
        Assert.Equal((2, ""), (refused.Code, refused.Out));
        Assert.Contains("the change cannot be written as a patch:", refused.Error, StringComparison.Ordinal);
        Assert.Equal(2, Tool.Run(["compare", path, folder.Write("b.show.json", Shows.Small), "--format", "patch", "--no-config"]).Civil().Code);
        Assert.Contains(extensions, Tool.Run(["fix", path, .. Only]).Civil().Out, StringComparison.Ordinal);
        Assert.Equal(odd, File.ReadAllText(path));
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

    public static TheoryData<string[]> Accounts =>
        new(
            ["--dry-run"],
            ["--dry-run", "--unsafe"],
            ["--dry-run", "--rule", "RR6004"],
            ["--dry-run", "--baseline", "BASELINE"],
            ["--out", "OUT", "--waivers", "WAIVERS", "--as-of", "2027-06-12"]
        );

    [Theory]
    [MemberData(nameof(Accounts))]
    public void As_json_the_account_meets_its_schema(string[] options)
    {
        var path = folder.Write("a.show.json", File.ReadAllText(Repository.At("schema", "examples", "05-festival-mistakes.show.json")));
        var baseline = folder.At("b.json");
        Tool.Run("check", path, "--no-config", "--baseline", baseline, "--update-baseline", "--force").Civil();
        var waivers = folder.Write("w.json", Waivers("RR6004", "input", "box-c/in/21-22", "*"));
        string Named(string option) =>
            option switch
            {
                "BASELINE" => baseline,
                "WAIVERS" => waivers,
                "OUT" => folder.At("out.show.json"),
                _ => option,
            };
        var result = Tool.Run(["fix", path, "--no-config", "--format", "json", .. options.Select(Named)]).Civil();

        Assert.Empty(SchemaValidator.Validate(SchemaKind.Fix, result.OutBytes));
        var root = JsonDocument.Parse(result.OutBytes).RootElement;
        Assert.Equal(options.Contains("WAIVERS"), root.GetProperty("waived").GetArrayLength() > 0);
        Assert.Equal(options.Contains("BASELINE"), root.GetProperty("known").GetArrayLength() > 0);
        // The only safe fix is the one that is waived.
        Assert.Equal(options.Contains("BASELINE") || options.Contains("WAIVERS"), root.GetProperty("applied").GetArrayLength() == 0);
        Assert.Equal(options.Contains("BASELINE"), root.GetProperty("remaining").GetArrayLength() == 0);
        Assert.Contains(
            root.GetProperty("remaining").EnumerateArray().Concat(root.GetProperty("known").EnumerateArray()),
            finding => finding.GetProperty("fixes").GetArrayLength() > 0
        );
    }

    [Fact]
    public void What_is_waived_or_known_is_left_alone_unless_its_rule_is_named()
    {
        var path = folder.Write("a.show.json", Faulty);
        var waivers = folder.Write("w.json", Waivers("RR2010", "to", "box/transmit/1", "a.show.json"));
        var waived = Tool.Run("fix", path, "--no-config", "--waivers", waivers, "--as-of", "2027-06-30", "--dry-run").Civil();
        Assert.Contains("0 fixes would be taken", waived.Out, StringComparison.Ordinal);
        Assert.Contains(" 1 accepted", waived.Out, StringComparison.Ordinal);
        Assert.Contains("\naccepted, and so not mended unless --rule names it\n  RR2010 ", waived.Out, StringComparison.Ordinal);
        Assert.Contains("\n    waived by Mira until 2027-06-30: for the test\n", waived.Out, StringComparison.Ordinal);

        var ended = Tool.Run("fix", path, "--no-config", "--waivers", waivers, "--as-of", "2027-07-01", "--dry-run").Civil();
        Assert.Contains("1 fix would be taken", ended.Out, StringComparison.Ordinal);
        var elsewhere = folder.Write("e.json", Waivers("RR2010", "to", "box/transmit/1", "b.show.json"));
        Assert.Contains(
            "1 fix would be taken",
            Tool.Run("fix", path, "--no-config", "--waivers", elsewhere, "--as-of", "2027-06-30", "--dry-run").Civil().Out,
            StringComparison.Ordinal
        );

        var baseline = folder.At("b.json");
        Tool.Run("check", path, "--no-config", "--baseline", baseline, "--update-baseline", "--force").Civil();
        var known = Tool.Run("fix", path, "--no-config", "--baseline", baseline).Civil();
        Assert.Equal((0, Faulty), (known.Code, known.Out));
        Assert.Equal(Shows.Small, Tool.Run("fix", path, "--no-config", "--baseline", baseline, "--rule", "RR2010").Civil().Out);
        Assert.Equal(
            Shows.Small,
            Tool.Run("fix", path, "--no-config", "--waivers", waivers, "--as-of", "2027-06-30", "--rule", "route-without-effect").Civil().Out
        );
    }

    [Fact]
    public void Waivers_and_baselines_are_never_written_over_and_must_be_sound()
    {
        var path = folder.Write("a.show.json", Faulty);
        var waivers = folder.Write("w.json", Waivers("RR2010", "to", "box/transmit/1", "*"));
        Assert.Contains("is the input itself", Tool.Run("fix", path, "--waivers", waivers, "--out", waivers).Civil().Error, StringComparison.Ordinal);
        Assert.Contains("there is no baseline", Tool.Run("fix", path, "--baseline", folder.At("none.json")).Civil().Error, StringComparison.Ordinal);
        var bad = Tool.Run("fix", path, "--waivers", folder.Write("bad.json", Waivers("RR0000", "to", "x", "*")), "--in-place").Civil();
        Assert.Equal(2, bad.Code);
        Assert.Contains("There is no rule 'RR0000' to waive", bad.Error, StringComparison.Ordinal);
        Assert.Equal(Faulty, File.ReadAllText(path));
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

    private static string Waivers(string rule, string role, string id, string scope) =>
        $$"""
            { "schemaVersion": 1, "waivers": [ { "rule": "{{rule}}", "entities": [ { "role": "{{role}}", "id": "{{id}}" } ], "reason": "for the test",
              "owner": "Mira", "expires": "2027-06-30", "scope": [ "{{scope}}" ] } ] }
            """;

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
        using var plain = JsonDocument.Parse(Tool.Run("check", path, "--no-config", "--format", "json").Civil().OutBytes);
        Assert.All(
            plain.RootElement.GetProperty("documents")[0].GetProperty("findings").EnumerateArray(),
            finding => Assert.Equal(0, finding.GetProperty("fixes").GetArrayLength())
        );
    }
}
