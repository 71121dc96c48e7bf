using RoutingRules.Documents.Text;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Waivers;

namespace RoutingRules.Engine.DocumentRuns;

/// <summary>Waivers that stand in the show they are about.</summary>
public static class OwnWaivers
{
    /// <summary>The book of a show's own waivers; null when it has none, or when something is wrong with them, so that none counts.</summary>
    /// <param name="show">The show.</param>
    /// <param name="catalogue">Every rule there is, see <see cref="RoutingEngine.Catalogue"/>.</param>
    /// <param name="asOf">The day for which the check is made.</param>
    /// <exception cref="ArgumentNullException"><paramref name="show"/> is null.</exception>
    public static WaiverBook? Book(Show show, ValueList<RuleDescriptor> catalogue, DateOnly asOf)
    {
        ArgumentNullException.ThrowIfNull(show);
        return !show.Waivers.IsEmpty && WaiverCheck.Problems(List(show), catalogue).IsEmpty ? new WaiverBook(List(show), catalogue, asOf) : null;
    }

    /// <summary>
    /// The check with those findings set apart that the show's own waivers excuse, and with what there is to say about these: faults, of which one makes
    /// that none of them counts, and those that have expired or fit nothing.
    /// </summary>
    /// <param name="document">The document as checked.</param>
    /// <param name="engine">The engine that checked.</param>
    /// <param name="asOf">The day for which the check is made.</param>
    /// <param name="utf8Json">The text that was checked.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static DocumentCheck WithOwnWaivers(this DocumentCheck document, RoutingEngine engine, DateOnly asOf, ReadOnlyMemory<byte> utf8Json)
    {
        ArgumentNullException.ThrowIfNull(document);
        ArgumentNullException.ThrowIfNull(engine);
        if (document.Show is not { Waivers.IsEmpty: false } show)
        {
            return document;
        }

        if (Book(show, engine.Catalogue, asOf) is not { } book)
        {
            return With(document, WaiverCheck.Problems(List(show), engine.Catalogue).Locate(utf8Json.Span));
        }

        var applied = book.Apply(document, "");
        return With(applied, book.Report(document.Path, utf8Json.Span).Result.Findings);
    }

    private static DocumentCheck With(DocumentCheck document, ValueList<Finding> findings) =>
        document with
        {
            Result = document.Result with { Findings = ReadingResults.Merge(document.Result.Findings, findings) },
        };

    private static WaiverList List(Show show) => new() { Waivers = show.Waivers.Select(waiver => waiver with { Scope = ["**"] }).ToValueList() };
}
