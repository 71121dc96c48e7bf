using System.Globalization;
using RoutingRules.Checking;
using RoutingRules.Configuration;
using RoutingRules.Documents.Formats;
using RoutingRules.Documents.Text;
using RoutingRules.Model;
using RoutingRules.Rules;

namespace RoutingRules.Engine.Configuration;

/// <summary>A configuration laid together from its files, which still knows where each value was set. Immutable and thread safe.</summary>
public sealed class LoadedConfig
{
    private readonly List<ConfigLayer> layers;

    internal LoadedConfig(List<ConfigLayer> layers)
    {
        this.layers = layers;
        var merged = new ConfigFile();
        foreach (var layer in layers)
        {
            merged = layer.File.Over(merged);
        }

        Config = merged.ToConfig();
    }

    /// <summary>The usual configuration, which no file sets.</summary>
    public static LoadedConfig Usual { get; } = new([]);

    /// <summary>What counts; it extends nothing any more.</summary>
    public EngineConfig Config { get; }

    /// <summary>The files, those that others build on first; the last is the one that was asked for.</summary>
    public ValueList<string> Files => layers.Select(layer => layer.Path).ToValueList();

    /// <summary>Where a value of <see cref="Config"/> was set.</summary>
    /// <param name="pointer">Its JSON Pointer there, such as <c>/rules/3/severity</c> or <c>/failOn</c>.</param>
    /// <returns>File, line and column; null when no file sets it.</returns>
    public string? PlaceOf(string pointer)
    {
        ArgumentNullException.ThrowIfNull(pointer);
        var parts = pointer.Split('/');
        if (parts.Length > 2 && parts[1] == "rules" && int.TryParse(parts[2], NumberStyles.None, CultureInfo.InvariantCulture, out var index))
        {
            foreach (var layer in layers)
            {
                if (index < layer.File.Rules.Count)
                {
                    parts[2] = index.ToString(CultureInfo.InvariantCulture);
                    return Place(layer, string.Join('/', parts));
                }

                index -= layer.File.Rules.Count;
            }
        }
        else if (pointer == "/failOn" && layers.FindLast(layer => layer.File.FailOn is not null) is { } setter)
        {
            return Place(setter, pointer);
        }

        return null;
    }

    /// <summary>The values that count for a rule, each with the place that set it: <c>enabled</c>, <c>severity</c>, the options, then <c>failOn</c>.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="rule"/> is null.</exception>
    public ValueList<EffectiveValue> Explain(RuleDescriptor rule)
    {
        ArgumentNullException.ThrowIfNull(rule);
        var enabled = new EffectiveValue { Name = "enabled", Value = "true" };
        var severity = new EffectiveValue { Name = "severity", Value = PlainText.Word(rule.Severity) };
        var options = rule.Options.Select(option => new EffectiveValue { Name = option.Name, Value = Number(option.Default) }).ToArray();
        for (var i = 0; i < Config.Rules.Count; i++)
        {
            var setting = Config.Rules[i];
            if (!RuleSelection.Selects(setting.Rule, rule))
            {
                continue;
            }

            var at = string.Create(CultureInfo.InvariantCulture, $"/rules/{i}");
            enabled = setting.Enabled is { } runs ? enabled with { Value = runs ? "true" : "false", Place = PlaceOf($"{at}/enabled") } : enabled;
            severity = setting.Severity is { } grave ? severity with { Value = PlainText.Word(grave), Place = PlaceOf($"{at}/severity") } : severity;
            for (var j = 0; j < setting.Options.Count; j++)
            {
                var option = Array.FindIndex(options, known => known.Name == setting.Options[j].Name);
                if (option >= 0)
                {
                    var place = PlaceOf(string.Create(CultureInfo.InvariantCulture, $"{at}/options/{j}/value"));
                    options[option] = options[option] with { Value = Number(setting.Options[j].Value), Place = place };
                }
            }
        }

        return
        [
            enabled,
            severity,
            .. options,
            new EffectiveValue
            {
                Name = "failOn",
                Value = PlainText.Word(Config.FailOn),
                Place = PlaceOf("/failOn"),
            },
        ];
    }

    private static string Number(double value) => value.ToString(CultureInfo.InvariantCulture);

    private static string Place(ConfigLayer layer, string pointer) => $"{layer.Path}:{TextLocator.Find(layer.Utf8.Span, pointer)}";
}
