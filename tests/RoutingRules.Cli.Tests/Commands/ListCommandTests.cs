using RoutingRules.Checking.Catalogue;
using RoutingRules.Cli.Tests.Rig;
using RoutingRules.Documents.Formats;
using RoutingRules.Documents.Tables;
using RoutingRules.Profiles.Generic;
using RoutingRules.Reports.Schemas;
using RoutingRules.Schema;

namespace RoutingRules.Cli.Tests.Commands;

/// <summary><c>rules</c>, <c>profiles</c> and <c>schemas</c>.</summary>
public sealed class ListCommandTests : IDisposable
{
    private readonly TempFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void Rules_lists_each_rule_once_in_order()
    {
        var result = Tool.Run("rules").Civil();
        var ids = result.Out.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(line => line.Split(' ')[0]).ToList();

        Assert.Equal(0, result.Code);
        Assert.Equal(ids.Order(StringComparer.Ordinal), ids);
        Assert.Equal(ids.Distinct(), ids);
        Assert.Equal(
            ReadingRules.All.Count
                + WaiverRules.All.Count
                + ChangeRules.All.Count
                + RunningOrderRules.All.Count
                + RoutingEngine.CreateBuilder().Build().Rules.Count,
            ids.Count
        );
    }

    [Theory]
    [InlineData("RR1003")]
    [InlineData("rr1003")]
    [InlineData("member-duplicate")]
    public void Rules_tells_all_about_one(string name)
    {
        var result = Tool.Run("rules", name).Civil();

        Assert.Equal(0, result.Code);
        Assert.StartsWith("RR1003 member-duplicate: Member written twice\n", result.Out, StringComparison.Ordinal);
        Assert.Contains("RFC 8259, section 4", result.Out, StringComparison.Ordinal);
        Assert.Contains("Keep one of the two.", result.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Profiles_lists_every_generic_profile()
    {
        var result = Tool.Run("profiles").Civil();

        Assert.Equal(0, result.Code);
        Assert.Equal(
            new GenericProfiles().Ids.Select(id => id.Value),
            result.Out.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(line => line.Split(' ')[0])
        );
    }

    [Fact]
    public void Profiles_shows_groups_and_routing_of_one()
    {
        var result = Tool.Run("profiles", "generic/stage-box-small").Civil();

        Assert.Equal(0, result.Code);
        Assert.StartsWith("generic/stage-box-small, version 1: Stage box, 16 in, 8 out (stage-box)\n", result.Out, StringComparison.Ordinal);
        Assert.Matches("(?m)^  receive +slots from the network +8 +4", result.Out);
        Assert.Contains("  in to transmit  fixed one to one\n", result.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_generic_profile_can_be_shown()
    {
        foreach (var id in new GenericProfiles().Ids)
        {
            Assert.Equal(0, Tool.Run("profiles", id.Value).Civil().Code);
        }
    }

    [Theory]
    [InlineData("rules", "RR0000")]
    [InlineData("profiles", "generic/unheard-of")]
    [InlineData("rules", "")]
    [InlineData("profiles", "")]
    public void Something_unknown_is_wrong_usage_that_names_the_list(string command, string id)
    {
        var result = Tool.Run(command, id).Civil();

        Assert.Equal(2, result.Code);
        Assert.Equal("", result.Out);
        Assert.Contains($"'routing-rules {command}' lists them all", result.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Schemas_writes_the_published_schemas()
    {
        var result = Tool.Run("schemas", folder.Root).Civil();

        Assert.Equal(0, result.Code);
        Assert.Equal("", result.Out);
        Assert.Equal(
            [
                "baseline.schema.json",
                "changeover.schema.json",
                "comparison.schema.json",
                "config.schema.json",
                "device-profile.schema.json",
                "fix.schema.json",
                "impact.schema.json",
                "import.schema.json",
                "report.schema.json",
                "rule-options.schema.json",
                "rules.md",
                "run.schema.json",
                "show.schema.json",
                "waivers.schema.json",
                "why.schema.json",
            ],
            folder.Names
        );
        foreach (var kind in Enum.GetValues<SchemaKind>())
        {
            Assert.Equal(RoutingSchemas.Text(kind), File.ReadAllText(folder.At(SchemaGenerator.FileName(kind))));
        }
    }

    [Theory]
    [InlineData("rules.md")]
    [InlineData("rule-options.schema.json")]
    public void The_published_catalogue_is_what_the_rules_say(string name)
    {
        Tool.Run("schemas", folder.Root).Civil();

        Assert.True(
            File.ReadAllText(folder.At(name)) == File.ReadAllText(Repository.At("schema", name)),
            $"schema/{name} is out of date; write it anew with: dotnet run --project src/RoutingRules.Cli -- schemas schema"
        );
    }

    [Fact]
    public void Rules_as_markdown_is_the_published_page() =>
        Assert.Equal(File.ReadAllText(Repository.At("schema", "rules.md")), Tool.Run("rules", "--markdown").Civil().Out);

    [Fact]
    public void Rules_tells_what_counts_and_which_line_set_it()
    {
        var config = folder.Write("crew.json", "{ \"schemaVersion\": 1,\n  \"rules\": [\n    { \"rule\": \"RR20*\",\n      \"severity\": \"note\" } ] }");
        var result = Tool.Run("rules", "RR2003", "--effective", "--config", config).Civil();

        Assert.Equal(0, result.Code);
        Assert.Equal(
            $"""
            RR2003 output-orphaned: Used output without signal

            enabled   true     default
            severity  note     {config}:4:19
            failOn    warning  default

            Configuration: {config}

            """,
            result.Out
        );
        Assert.Contains("severity  error    default\n", Tool.Run("rules", "RR2003", "--effective", "--no-config").Civil().Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("rules --effective", "needs its id")]
    [InlineData("rules RR2003 --markdown", "takes none")]
    [InlineData("rules RR2003 --config a", "add --effective")]
    [InlineData("rules RR2003 --effective --no-config --config a", "exclude each other")]
    public void Rules_refuses_options_that_do_not_fit_together(string line, string expected)
    {
        var result = Tool.Run(line.Split(' ')).Civil();

        Assert.Equal((2, ""), (result.Code, result.Out));
        Assert.Contains(expected, result.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Schemas_refuses_a_folder_that_is_not_there()
    {
        var result = Tool.Run("schemas", folder.At("none")).Civil();

        Assert.Equal(2, result.Code);
        Assert.Contains("make it first", result.Error, StringComparison.Ordinal);
        Assert.Empty(folder.Names);
    }
}
