using System.Globalization;
using System.Text.Json;
using RoutingRules.Model;

namespace RoutingRules.Documents.Upgrading;

/// <summary>Runs upgraders one after the other until a document is in the present version.</summary>
internal static class UpgradeChain
{
    private const int MaxDepth = 1024;

    /// <summary>What came of it.</summary>
    /// <param name="Utf8">The text after the last step.</param>
    /// <param name="Steps">The steps.</param>
    /// <param name="Fault">Which upgrader failed and how; null when none did.</param>
    /// <param name="IsCurrent">True when the text is in the present version.</param>
    public sealed record Outcome(byte[] Utf8, ValueList<UpgradeStep> Steps, string? Fault, bool IsCurrent);

    /// <param name="text">The document, without a byte order mark.</param>
    /// <param name="found">The version it says.</param>
    /// <param name="version">The present version.</param>
    /// <param name="upgraders">The upgraders, in any order; of several for one version the first counts.</param>
    public static Outcome Run(ReadOnlySpan<byte> text, long found, int version, ReadOnlySpan<Upgrader> upgraders)
    {
        var steps = new List<UpgradeStep>();
        var utf8 = text.ToArray();
        while (found != version)
        {
            if (found > version || Find(upgraders, found) is not { } upgrader)
            {
                return new Outcome(utf8, steps.ToValueList(), null, false);
            }

            var changes = new List<string>();
            byte[] next;
            try
            {
                next = upgrader.Upgrade(utf8, changes);
            }
            catch (Exception fault)
            {
                return new Outcome(utf8, steps.ToValueList(), Fault(upgrader, $"failed ({fault.GetType().Name}: {fault.Message.TrimEnd('.')})"), false);
            }

            if (VersionOf(next) != found + 1)
            {
                return new Outcome(
                    utf8,
                    steps.ToValueList(),
                    Fault(upgrader, string.Create(CultureInfo.InvariantCulture, $"did not give a document of version {found + 1}")),
                    false
                );
            }

            steps.Add(
                new UpgradeStep
                {
                    From = found,
                    To = found + 1,
                    Changes = changes.ToValueList(),
                }
            );
            utf8 = next;
            found++;
        }

        return new Outcome(utf8, steps.ToValueList(), null, true);
    }

    /// <summary>The number at <c>/schemaVersion</c>; null when there is none before the text ends or stops being JSON.</summary>
    public static long? VersionOf(ReadOnlySpan<byte> text)
    {
        var json = new Utf8JsonReader(text, new JsonReaderOptions { MaxDepth = MaxDepth });
        try
        {
            while (json.Read())
            {
                if (json.CurrentDepth == 1 && json.TokenType == JsonTokenType.PropertyName && json.ValueTextEquals("schemaVersion"u8))
                {
                    return json.Read() && json.TokenType == JsonTokenType.Number && json.TryGetInt64(out var version) ? version : null;
                }
            }
        }
        catch (JsonException)
        {
            // The reader says what is wrong with the text.
        }

        return null;
    }

    private static Upgrader? Find(ReadOnlySpan<Upgrader> upgraders, long from)
    {
        foreach (var upgrader in upgraders)
        {
            if (upgrader.From == from)
            {
                return upgrader;
            }
        }

        return null;
    }

    private static string Fault(Upgrader upgrader, string what) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"The upgrader {upgrader.GetType().Name} from format version {upgrader.From} to {upgrader.From + 1} {what}."
        );
}
