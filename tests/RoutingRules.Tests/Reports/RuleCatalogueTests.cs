using System.Text.Json;
using RoutingRules.Reports.FindingReports;
using RoutingRules.Rules;

namespace RoutingRules.Tests.Reports;

public sealed class RuleCatalogueTests
{
    private static readonly RuleDescriptor Tuned = ReportSamples.Rule("T5", Severity.Note) with
    {
        Title = "A title with | in it",
        Fixability = Fixability.Safe,
        Options =
        [
            new()
            {
                Name = "maximumMetres",
                Doc = "The longest cable.",
                Default = 90,
                Minimum = 1,
                Maximum = 100,
                IsWhole = true,
            },
        ],
    };

    [Fact]
    public void The_page_tells_everything_a_rule_says_about_itself()
    {
        var page = RuleCatalogue.Markdown([ReportSamples.Rule("T1", Severity.Error), Tuned]);

        Assert.Contains("| [T5](#t5-t5) | `t5` | note | A title with \\| in it |\n", page, StringComparison.Ordinal);
        Assert.Contains("## RR2: points and routes\n", page, StringComparison.Ordinal);
        Assert.Contains(
            """
            ### T5 t5

            **A title with \| in it** (note)

            - Checks: Something.
            - Why: Because.
            - What to do: Mend T5.
            - Option `maximumMetres`: The longest cable. Whole number from 1 to 100, usually 90.
            - Fix by the engine: safe
            - Source: common practice, no source

            """,
            page,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void The_page_of_the_built_in_rules_names_each_once_and_says_which_always_count()
    {
        var catalogue = RoutingEngine.CreateBuilder().Build().Catalogue;
        var page = RuleCatalogue.Markdown(catalogue);

        Assert.All(catalogue, rule => Assert.Single(page.Split('\n'), line => line == $"### {rule.Id} {rule.Name}"));
        Assert.Equal(19, page.Split('\n').Count(line => line.StartsWith("- Always counts", StringComparison.Ordinal)));
    }

    [Fact]
    public void The_schema_of_options_knows_names_and_ranges()
    {
        var settings = JsonDocument
            .Parse(RuleCatalogue.OptionsSchema([ReportSamples.Rule("T1", Severity.Error), Tuned]))
            .RootElement.GetProperty("properties")
            .GetProperty("rules")
            .GetProperty("items")
            .GetProperty("anyOf");

        Assert.Equal(3, settings.GetArrayLength());
        Assert.Equal(0, settings[1].GetProperty("properties").GetProperty("options").GetProperty("maxItems").GetInt32());
        var option = settings[2].GetProperty("properties").GetProperty("options").GetProperty("items").GetProperty("anyOf")[0].GetProperty("properties");
        Assert.Equal("maximumMetres", option.GetProperty("name").GetProperty("enum")[0].GetString());
        Assert.Equal("""{"type":"integer","minimum":1,"maximum":100}""", JsonSerializer.Serialize(option.GetProperty("value")));
    }
}
