using RoutingRules.Checking.Catalogue;
using RoutingRules.Checking.Facts;
using RoutingRules.Documents.Text;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Waivers;

namespace RoutingRules.Engine.DocumentRuns;

/// <summary>Applies waivers to checked documents and keeps account of which of them were of use. Not thread safe.</summary>
public sealed class WaiverBook
{
    private readonly WaiverList list;
    private readonly DateOnly asOf;
    private readonly RuleDescriptor[] rules;
    private readonly Account[] accounts;

    /// <summary>Opens a book.</summary>
    /// <param name="list">The waivers, without problems.</param>
    /// <param name="catalogue">Every rule there is, see <see cref="RoutingEngine.Catalogue"/>.</param>
    /// <param name="asOf">The day for which the check is made; a waiver counts up to and including its last day.</param>
    /// <exception cref="ArgumentNullException"><paramref name="list"/> is null.</exception>
    /// <exception cref="ArgumentException"><see cref="WaiverCheck.Problems(WaiverList, ValueList{RuleDescriptor})"/> has something to say about the
    /// waivers.</exception>
    public WaiverBook(WaiverList list, ValueList<RuleDescriptor> catalogue, DateOnly asOf)
    {
        ArgumentNullException.ThrowIfNull(list);
        if (WaiverCheck.Problems(list, catalogue) is { IsEmpty: false } problems)
        {
            throw new ArgumentException(problems[0].Message, nameof(list));
        }

        this.list = list;
        this.asOf = asOf;
        rules = [.. list.Waivers.Select(waiver => catalogue.First(rule => rule.Id == waiver.Rule || rule.Name == waiver.Rule))];
        accounts = new Account[list.Waivers.Count];
    }

    /// <summary>Whether a waiver excuses a finding.</summary>
    /// <param name="finding">The finding, one of a check of the whole document.</param>
    /// <param name="path">The path of its document with <c>/</c>, relative to the folder of the waivers.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public bool Excuses(Finding finding, string path)
    {
        ArgumentNullException.ThrowIfNull(finding);
        ArgumentNullException.ThrowIfNull(path);
        for (var i = 0; i < rules.Length; i++)
        {
            var waiver = list.Waivers[i];
            if (
                rules[i].Id == finding.Rule
                && waiver.Expires >= asOf
                && Fits(waiver, finding)
                && waiver.Scope.Any(pattern => PathPattern.IsMatch(pattern, path))
            )
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>The document with those findings set apart that a waiver excuses.</summary>
    /// <param name="document">The document as checked.</param>
    /// <param name="path">Its path with <c>/</c>, relative to the folder of the waivers.</param>
    public DocumentCheck Apply(DocumentCheck document, string path)
    {
        ArgumentNullException.ThrowIfNull(document);
        ArgumentNullException.ThrowIfNull(path);
        var inScope = new List<int>();
        for (var i = 0; i < accounts.Length; i++)
        {
            if (list.Waivers[i].Scope.Any(pattern => PathPattern.IsMatch(pattern, path)))
            {
                inScope.Add(i);
                accounts[i].Covers = true;
                accounts[i].IsUnsure |= !Judgement.IsDecided(document.Result, rules[i].Id);
            }
        }

        var open = new List<Finding>();
        var waived = new List<WaivedFinding>();
        foreach (var finding in document.Result.Findings)
        {
            if (Find(finding, inScope) is { } waiver)
            {
                waived.Add(new WaivedFinding { Finding = finding, Waiver = waiver });
            }
            else
            {
                open.Add(finding);
            }
        }

        return waived.Count == 0 ? document : document with { Result = document.Result with { Findings = open.ToValueList() }, Waived = waived.ToValueList() };
    }

    /// <summary>What there is to say about the waivers themselves, once every document was applied: a check of the file that holds them.</summary>
    /// <remarks>Only waivers that cover a document of the run are spoken of; one is stale only when its rule could decide about all of these.</remarks>
    /// <param name="path">What to call the file.</param>
    /// <param name="utf8Json">Its text.</param>
    public DocumentCheck Report(string path, ReadOnlySpan<byte> utf8Json)
    {
        ArgumentNullException.ThrowIfNull(path);
        var findings = new List<Finding>();
        for (var i = 0; i < accounts.Length; i++)
        {
            var waiver = list.Waivers[i];
            if (accounts[i].Covers && waiver.Expires < asOf)
            {
                findings.Add(
                    Finding(
                        WaiverRules.WaiverExpired,
                        i,
                        $"The waiver of {Name(i)} by {waiver.Owner} ended on {PlainText.Day(waiver.Expires)} and excuses nothing any more."
                    )
                );
            }
            else if (accounts[i] is { Covers: true, Fits: false, IsUnsure: false })
            {
                findings.Add(Finding(WaiverRules.WaiverStale, i, $"The waiver of {Name(i)} by {waiver.Owner} fits no finding of the documents it covers."));
            }
        }

        FindingIdentity.MakeDistinct(findings);
        findings.Sort(FindingOrder.Instance);
        return new DocumentCheck
        {
            Path = path,
            Result = new CheckResult
            {
                Findings = findings.ToValueList().Locate(utf8Json),
                Rules = WaiverRules
                    .All.Select(rule => new RuleOutcome
                    {
                        Descriptor = rule,
                        Status =
                            findings.Exists(finding => finding.Rule == rule.Id) ? RuleStatus.Found
                            : accounts.Length == 0 ? RuleStatus.NotApplicable
                            : RuleStatus.Passed,
                        Subjects = accounts.Length,
                        WorkUnits = 0,
                    })
                    .ToValueList(),
                Undecided = default,
                WasRead = true,
            },
        };
    }

    private Waiver? Find(Finding finding, List<int> inScope)
    {
        Waiver? found = null;
        foreach (var i in inScope)
        {
            var waiver = list.Waivers[i];
            if (rules[i].Id != finding.Rule || !Fits(waiver, finding))
            {
                continue;
            }

            accounts[i].Fits = true;
            found ??= waiver.Expires < asOf ? null : waiver;
        }

        return found;
    }

    private static bool Fits(Waiver waiver, Finding finding) =>
        waiver.Fingerprint is { } fingerprint
            ? fingerprint == finding.Fingerprint()
            : waiver.Entities.All(entity => finding.Entities.Contains(entity)) && !finding.Entities.Any(entity => IsBeyond(waiver, entity));

    /// <summary>True for an entity in a role of which the waiver names others only: a point that joined the finding later is not excused.</summary>
    private static bool IsBeyond(Waiver waiver, Entity entity) => waiver.Entities.Any(named => named.Role == entity.Role) && !waiver.Entities.Contains(entity);

    private string Name(int i)
    {
        var waiver = list.Waivers[i];
        var about = waiver.Fingerprint ?? string.Join(", ", waiver.Entities.Select(entity => $"{entity.Role} {entity.Id}"));
        return $"{rules[i].Id} {rules[i].Name} ({about})";
    }

    private Finding Finding(RuleDescriptor rule, int i, string message)
    {
        var waiver = list.Waivers[i];
        return new Finding
        {
            Rule = rule.Id,
            Name = rule.Name,
            Severity = rule.Severity,
            Message = message,
            Remedy = rule.Remedy,
            Entities =
            [
                Entity.Of("rule", rules[i].Id),
                .. waiver.Fingerprint is { } fingerprint ? [Entity.Of("fingerprint", fingerprint)] : waiver.Entities,
                .. waiver.Scope.Select(pattern => Entity.Of("scope", pattern)),
            ],
            Pointer = FormattableString.Invariant($"/waivers/{i}"),
        };
    }

    private struct Account
    {
        /// <summary>A document of the run is in its scope.</summary>
        public bool Covers;

        /// <summary>It fitted a finding, expired or not.</summary>
        public bool Fits;

        /// <summary>Its rule did not run, or could not decide, on some document in its scope.</summary>
        public bool IsUnsure;
    }
}
