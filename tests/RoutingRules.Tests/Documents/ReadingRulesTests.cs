using RoutingRules.Documents.Tables;
using RoutingRules.Rules;

namespace RoutingRules.Tests.Documents;

public sealed class ReadingRulesTests
{
    [Fact]
    public void Ids_run_from_RR1001_without_a_gap() =>
        Assert.Equal(Enumerable.Range(1001, 10).Select(number => $"RR{number}"), ReadingRules.All.Select(rule => rule.Id));

    [Fact]
    public void All_are_errors_but_the_note_about_an_upgrade() =>
        Assert.Equal(["format-upgraded"], ReadingRules.All.Where(rule => rule.Severity != Severity.Error).Select(rule => rule.Name));

    [Fact]
    public void Every_descriptor_is_filled() =>
        Assert.All(
            ReadingRules.All,
            rule =>
            {
                Assert.Equal(RuleFamily.Document, rule.Family);
                Assert.Matches("^[a-z]+(-[a-z]+)+$", rule.Name);
                Assert.All([rule.Title, rule.Checks, rule.Why, rule.Remedy, rule.Source], text => Assert.False(string.IsNullOrWhiteSpace(text)));
            }
        );
}
