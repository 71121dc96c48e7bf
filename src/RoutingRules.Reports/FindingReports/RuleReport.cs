using System.Globalization;
using RoutingRules.Documents.Text;
using RoutingRules.Engine.Configuration;
using RoutingRules.Model;
using RoutingRules.Rules;

namespace RoutingRules.Reports.FindingReports;

/// <summary>Writes rules, for people.</summary>
/// <remarks>Lines end with LF; the same rules give the same text.</remarks>
public static class RuleReport
{
    /// <summary>One line for each rule, in the order given: id, severity, name, title.</summary>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static void WriteList(IEnumerable<RuleDescriptor> rules, TextWriter output)
    {
        ArgumentNullException.ThrowIfNull(rules);
        ArgumentNullException.ThrowIfNull(output);
        var table = new TextColumns();
        foreach (var rule in rules)
        {
            table.Add(rule.Id, PlainText.Word(rule.Severity), rule.Name, rule.Title);
        }

        table.WriteTo(output, "");
    }

    /// <summary>Everything a rule says about itself.</summary>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static void Write(RuleDescriptor rule, TextWriter output)
    {
        ArgumentNullException.ThrowIfNull(rule);
        ArgumentNullException.ThrowIfNull(output);
        output.Write($"{rule.Id} {rule.Name}: {rule.Title}\n\n");
        var table = new TextColumns();
        table.Add("Severity", Words(rule));
        table.Add("Family", Family(rule.Family));
        table.Add("Checks", rule.Checks);
        table.Add("Why", rule.Why);
        table.Add("What to do", rule.Remedy);
        table.Add("Source", rule.Source);
        table.Add("Fix", Word(rule.Fixability));
        foreach (var option in rule.Options)
        {
            table.Add(
                "Option",
                string.Create(CultureInfo.InvariantCulture, $"{option.Name}: {option.Doc} From {option.Minimum} to {option.Maximum}, usually {option.Default}.")
            );
        }

        table.WriteTo(output, "");
        if (RuleExample.Of(rule.Id) is { } example)
        {
            output.Write(
                "\nA piece of a show that it finds fault with:\n\n  "
                    + $"{example.Bad}\n\n  {example.Says}\n{(example.Good is { } good ? $"\nA piece of one that passes:\n\n  {good}\n" : "")}"
            );
        }
    }

    /// <summary>What counts for a rule under a configuration, each value with the file and line that set it.</summary>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static void WriteEffective(RuleDescriptor rule, LoadedConfig config, TextWriter output)
    {
        ArgumentNullException.ThrowIfNull(rule);
        ArgumentNullException.ThrowIfNull(config);
        ArgumentNullException.ThrowIfNull(output);
        output.Write($"{rule.Id} {rule.Name}: {rule.Title}\n\n");
        var table = new TextColumns();
        foreach (var value in config.Explain(rule))
        {
            table.Add(value.Name, value.Value, value.Place is null ? "default" : PlainText.Show(value.Place));
        }

        table.WriteTo(output, "");
        output.Write(config.Files.IsEmpty ? "\nNo configuration was found.\n" : $"\nConfiguration: {PlainText.Show(string.Join(", then ", config.Files))}\n");
    }

    /// <summary>All severities that findings of a rule may have, the gravest first.</summary>
    internal static ValueList<Severity> Severities(RuleDescriptor rule) => rule.Severities.IsEmpty ? [rule.Severity] : rule.Severities;

    /// <summary>The severities of a rule in words: <c>error or warning</c>.</summary>
    internal static string Words(RuleDescriptor rule) => string.Join(" or ", Severities(rule).Select(PlainText.Word));

    internal static string Word(Fixability fixability) =>
        fixability switch
        {
            Fixability.Safe => "safe",
            Fixability.Unsafe => "unsafe",
            Fixability.Manual => "manual",
            _ => "none",
        };

    internal static string Family(RuleFamily family) =>
        family switch
        {
            RuleFamily.Document => "the document itself",
            RuleFamily.Points => "points and routes",
            RuleFamily.Feeds => "feeds",
            RuleFamily.Streams => "streams and blocks",
            RuleFamily.Network => "network and clock",
            RuleFamily.Lines => "lines and electrical",
            RuleFamily.Labels => "labels",
            RuleFamily.Resilience => "resilience",
            _ => "hearing and safety",
        };
}
