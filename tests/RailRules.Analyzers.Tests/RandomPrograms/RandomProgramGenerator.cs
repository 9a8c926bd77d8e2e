using System.Text;
using CsCheck;

namespace RailRules.Analyzers.Tests.RandomPrograms;

/// <summary>
/// Makes well-typed programs: a class <c>P</c> with fields, helper methods and results, over numbers of several types, texts, arrays, records, tuples, quantities
/// and parts. Each ends after a bounded number of steps. Shrinks by size, the number of characters.
/// </summary>
internal sealed class RandomProgramGenerator : Gen<string>
{
    /// <summary>The types and helpers that every program may use; they stand in the namespace <c>Random</c>.</summary>
    public const string Prelude = """
        using System.Globalization;
        using RailRules;
        using UnitsNet;

        namespace Random;

        public enum Kind { None, Fused, Open = 5, Last }

        public sealed record Item(int Number, string Label, double Weight)
        {
            public int Extra { get; init; } = 7;

            public double Total => Number * Weight + Extra;
        }

        public record struct Point(int X, double Y)
        {
            public static Point operator +(Point a, Point b) => new(a.X + b.X, a.Y + b.Y);

            public void Move(int by) => X += by;
        }

        public class Cell(int start)
        {
            private int value = start;

            public int Value { get => value; set => this.value = value ^ 1; }

            public virtual int Next(int by) => value += by;
        }

        public sealed class DoubleCell(int start) : Cell(start)
        {
            public override int Next(int by) => base.Next(by) + base.Next(by);
        }

        public static class Cut
        {
            public static string Of(string text) => text.Length > 60 ? text[..60] : text;

            public static int[] Of(int[] items) => items.Length > 12 ? items[..12] : items;
        }
        """;

    private static readonly string[] Types = ["int", "long", "uint", "byte", "double", "float", "decimal", "bool", "string", "char", "int[]", "int?", "double?", "Kind", "Item", "Point", "(int A, string B)", "ElectricCurrent", "ElectricPotential", "Fuse"];

    /// <inheritdoc/>
    public override string Generate(PCG pcg, Size? min, out Size size)
    {
        var text = new Writer(pcg).Program();
        size = new Size((ulong)text.Length);
        return text;
    }

    private sealed class Writer(PCG pcg)
    {
        private readonly StringBuilder text = new();
        private readonly List<(string Type, string Name)> constants = [];
        private readonly List<(string Result, string Name, string[] Parameters)> methods = [];
        private readonly List<Variable> scope = [];
        private int names;
        private int loops;
        private int statements;

        /// <summary>Text of the members of one class.</summary>
        public string Program()
        {
            foreach (var type in Types)
            {
                var name = "C" + constants.Count;
                text.Append($"    private static readonly {type} {name} = {Literal(type)};\n");
                constants.Add((type, name));
            }

            for (var i = Next(3) + 1; i > 0; i--)
                Method();
            for (int i = 0, count = Next(3) + 2; i < count; i++)
            {
                var type = Type();
                text.Append($"    public static {type} R{i} => {Expression(type, 4)};\n");
            }

            return text.ToString();
        }

        private int Next(int limit) => (int)pcg.Next((uint)limit);

        private bool Chance(int percent) => Next(100) < percent;

        private T Pick<T>(params T[] items) => items[Next(items.Length)];

        private string Choose(params Func<string>[] items) => items[Next(items.Length)]();

        private string Type() => Chance(40) ? Types[Next(7)] : Types[Next(Types.Length)];

        private string Name(string prefix) => prefix + names++;

        private void Method()
        {
            var result = Type();
            var name = "M" + methods.Count;
            var parameters = Enumerable.Range(0, Next(4)).Select(_ => Type()).ToArray();
            scope.Clear();
            loops = 0;
            statements = 0;
            foreach (var type in parameters)
                scope.Add(new(type, Name("p"), true));
            text.Append($"    private static {result} {name}({string.Join(", ", scope.Select(p => $"{p.Type} {p.Name}"))})\n    {{\n");
            Block(8, 2, Next(6) + 2, result);
            text.Append($"        return {Expression(result, 3)};\n    }}\n\n");
            scope.Clear();
            methods.Add((result, name, parameters));
        }

        private void Block(int indent, int depth, int count, string result)
        {
            var before = scope.Count;
            for (var i = 0; i < count && statements < 40; i++)
            {
                statements++;
                Statement(indent, depth, result);
            }

            scope.RemoveRange(before, scope.Count - before);
        }

        private void Line(int indent, string line) => text.Append(' ', indent).Append(line).Append('\n');

        private void Statement(int indent, int depth, string result)
        {
            var kind = Next(100);
            if (kind < 30 || scope.Count(v => v.Writable) == 0)
                Declaration(indent);
            else if (kind < 55)
                Assignment(indent);
            else if (depth > 0)
                Compound(indent, depth - 1, result);
            else
                Assignment(indent);
        }

        private void Declaration(int indent)
        {
            var kind = Next(14);
            var name = Name("v");
            switch (kind)
            {
                case 0:
                    Line(indent, $"Func<int, int> {name} = {name}x => {WithVariable("int", name + "x", () => Expression("int", 2))};");
                    scope.Add(new("Func<int, int>", name, false));
                    break;
                case 1:
                    var inner = Name("a");
                    Line(indent, $"double {name}(double {inner}) => {WithVariable("double", inner, () => Expression("double", 2))};");
                    scope.Add(new("double(double)", name, false));
                    break;
                case 2:
                    Line(indent, $"var {name} = new List<int> {{ {Expression("int", 2)}, {Expression("int", 1)} }};");
                    scope.Add(new("List<int>", name, false));
                    break;
                case 3:
                    var other = Name("v");
                    Line(indent, $"var ({name}, {other}) = ({Expression("int", 2)}, {Expression("double", 2)});");
                    scope.Add(new("int", name, true));
                    scope.Add(new("double", other, true));
                    break;
                case 4:
                    Line(indent, $"Cell {name} = new {Pick("Cell", "DoubleCell")}({Expression("int", 1)});");
                    scope.Add(new("Cell", name, false));
                    break;
                case 5:
                    Line(indent, $"object {name} = {Expression(Type(), 2)};");
                    scope.Add(new("object", name, false));
                    break;
                default:
                    var type = Type();
                    Line(indent, $"{type} {name} = {Expression(type, 3)};");
                    scope.Add(new(type, name, true));
                    break;
            }
        }

        private string WithVariable(string type, string name, Func<string> body)
        {
            scope.Add(new(type, name, false));
            var made = body();
            scope.RemoveAt(scope.Count - 1);
            return made;
        }

        private void Assignment(int indent)
        {
            if (Variable("List<int>") is { } list && Chance(30))
            {
                Line(indent, Chance(70) ? $"{list}.Add({Expression("int", 2)});" : $"{list}[{Expression("int", 1)} & 1] += {Expression("int", 1)};");
                return;
            }

            if (Variable("Cell") is { } cell && Chance(40))
            {
                Line(indent, Choose(() => $"{cell}.Value += {Expression("int", 1)};", () => $"{cell}.Value++;", () => $"{cell}.Next({Expression("int", 1)});"));
                return;
            }

            var targets = scope.Where(v => v.Writable).ToArray();
            if (targets.Length == 0)
            {
                Declaration(indent);
                return;
            }

            var (type, name, _) = Pick(targets);
            Line(indent, type switch
            {
                "int" or "long" or "uint" or "byte" when Chance(60) => Choose(() => $"{name}++;", () => $"{name} {Pick("+=", "-=", "*=", "^=", "|=", "&=")} {Cast(type, Expression("int", 2))};", () => $"{name} {Pick("<<=", ">>=", ">>>=")} {Expression("int", 1)};", () => $"checked {{ {name} += {Cast(type, Expression("int", 2))}; }}"),
                "double" or "float" or "decimal" when Chance(60) => Choose(() => $"--{name};", () => $"{name} {Pick("+=", "-=", "*=", "/=", "%=")} {Expression(type, 2)};"),
                "string" => $"{name} = Cut.Of({name} + {Expression(Pick("string", "int", "char", "double", "bool", "Kind"), 2)});",
                "int[]" => Choose(() => $"{name} = Cut.Of({Expression("int[]", 2)});", () => $"{{ {name} = [.. {name}, 1]; {name}[^1] = {Expression("int", 2)}; }}"),
                "int?" or "double?" when Chance(40) => $"{name} ??= {Expression(type.TrimEnd('?'), 2)};",
                "Point" when Chance(60) => Choose(() => $"{name}.Move({Expression("int", 1)});", () => $"{name}.X ^= {Expression("int", 1)};", () => $"{name}.Y = {Expression("double", 2)};"),
                "(int A, string B)" when Chance(50) => $"{name}.A -= {Expression("int", 2)};",
                "bool" when Chance(50) => $"{name} {Pick("&=", "|=", "^=")} {Expression("bool", 2)};",
                _ => $"{name} = {Expression(type, 3)};",
            });
        }

        private void Compound(int indent, int depth, string result)
        {
            var name = Name("i");
            switch (loops >= 2 ? Pick(0, 5, 6, 8) : Next(9))
            {
                case 0:
                    Line(indent, $"if ({Expression("bool", 3)})");
                    Braces(indent, depth, result);
                    if (Chance(50))
                    {
                        Line(indent, "else");
                        Braces(indent, depth, result);
                    }

                    break;
                case 1 or 2:
                    Line(indent, $"for (var {name} = 0; {name} < {Next(4) + 1}; {name}++)");
                    Loop(indent, depth, result, "int", name);
                    break;
                case 3:
                    Line(indent, $"foreach (var {name} in {Expression("int[]", 2)}.Take(4))");
                    Loop(indent, depth, result, "int", name);
                    break;
                case 4:
                    Line(indent, $"foreach (var {name} in {Expression("string", 2)}.Take(4))");
                    Loop(indent, depth, result, "char", name);
                    break;
                case 5:
                    Line(indent, $"switch ({Expression("int", 2)} & 3)");
                    Line(indent, "{");
                    Line(indent + 4, $"case {Next(2)}:");
                    Block(indent + 8, depth, Next(2) + 1, result);
                    Line(indent + 8, "break;");
                    Line(indent + 4, $"case {2 + Next(3)} when {Expression("bool", 2)}:");
                    Line(indent + 4, "default:");
                    Block(indent + 8, depth, Next(2) + 1, result);
                    Line(indent + 8, Chance(20) ? $"return {Expression(result, 2)};" : "break;");
                    Line(indent, "}");
                    break;
                case 6:
                    Line(indent, "try");
                    Braces(indent, depth, result);
                    Line(indent, "finally");
                    Braces(indent, depth, null);
                    break;
                case 7:
                    Line(indent, $"var {name} = {Next(4) + 1};");
                    Line(indent, $"while ({name}-- > 0)");
                    Loop(indent, depth, result, "int", name);
                    break;
                default:
                    Line(indent, $"if ({Expression("bool", 2)})");
                    Line(indent + 4, result is null ? "_ = 0;" : $"return {Expression(result, 2)};");
                    break;
            }
        }

        private void Loop(int indent, int depth, string result, string type, string name)
        {
            loops++;
            Line(indent, "{");
            scope.Add(new(type, name, false));
            Block(indent + 4, depth, Next(3) + 1, result);
            if (Chance(25))
                Line(indent + 4, $"if ({Expression("bool", 2)}) {Pick("break", "continue")};");
            scope.RemoveAt(scope.Count - 1);
            Line(indent, "}");
            loops--;
        }

        private void Braces(int indent, int depth, string? result)
        {
            Line(indent, "{");
            Block(indent + 4, result is null ? 0 : depth, Next(3) + 1, result!);
            Line(indent, "}");
        }

        private string? Variable(string type) => scope.Where(v => v.Type == type).ToArray() is { Length: > 0 } found ? Pick(found).Name : null;

        private static string Cast(string type, string expression) => type == "int" ? expression : $"({type})({expression})";

        private string Literal(string type) => type switch
        {
            "int" => Pick("0", "1", "(-1)", "7", "13", "(-40)", "255", "int.MaxValue", "int.MinValue", "1000003"),
            "long" => Pick("0L", "1L", "(-3L)", "5_000_000_000", "long.MaxValue", "(-77L)"),
            "uint" => Pick("0u", "3u", "4_000_000_000u", "uint.MaxValue"),
            "byte" => Pick("((byte)0)", "((byte)9)", "((byte)200)", "byte.MaxValue"),
            "double" => Pick("0.0", "1.5", "(-0.1)", "0.75", "54.0", "1e10", "3e-5", "double.NaN", "(-0.0)", "2.5"),
            "float" => Pick("0f", "0.1f", "(-2.5f)", "1e7f", "16777216f"),
            "decimal" => Pick("0m", "1.10m", "(-2.5m)", "0.001m", "123456.789m"),
            "bool" => Pick("true", "false"),
            "string" => Pick("\"\"", "\"F1\"", "\"rail\"", "\"Reed 20\"", "\"é\"", "\"a,b\""),
            "char" => Pick("'a'", "'Z'", "'0'", "' '"),
            "int[]" => Pick("((int[])[])", "((int[])[1, 2, 3])", "new[] { 5, -5, 5 }", "new int[2]"),
            "int?" => Pick("((int?)null)", "((int?)4)", "((int?)-9)"),
            "double?" => Pick("((double?)null)", "((double?)0.5)"),
            "Kind" => Pick("Kind.None", "Kind.Fused", "Kind.Open", "Kind.Last", "((Kind)2)"),
            "Item" => $"new Item({Literal("int")}, {Literal("string")}, {Literal("double")})",
            "Point" => $"new Point({Literal("int")}, {Literal("double")})",
            "(int A, string B)" => $"({Literal("int")}, {Literal("string")})",
            "ElectricCurrent" => Pick("20.Amperes()", "0.5.Amperes()", "ElectricCurrent.FromMilliamperes(250)", "ElectricCurrent.Zero"),
            "ElectricPotential" => Pick("54.Volts()", "3.3m.Volts()", "1.2.Kilovolts()"),
            _ => Pick("new Fuse { PartNumber = \"Marl10\", RatedCurrent = 10.Amperes() }", "new Fuse()"),
        };

        /// <summary>A value that the compiler does not fold: a constant of the class, a variable.</summary>
        private string Leaf(string type)
        {
            if (Chance(75) && Variable(type) is { } variable)
                return variable;
            return Chance(25) && type is not ("Fuse" or "Item") ? "(" + Literal(type) + ")" : constants.First(constant => constant.Type == type).Name;
        }

        private string Dynamic(string type) => Variable(type) is { } variable && Chance(60) ? variable : constants.First(constant => constant.Type == type).Name;

        private string Expression(string type, int depth)
        {
            if (depth <= 0 || Chance(12))
                return Leaf(type);
            var kind = Next(100);
            if (kind < 10)
                return $"({Expression("bool", depth - 1)} ? {Expression(type, depth - 1)} : {Expression(type, depth - 1)})";
            if (kind < 22 && methods.Where(method => method.Result == type).ToArray() is { Length: > 0 } found)
            {
                var (_, name, parameters) = Pick(found);
                return $"{name}({string.Join(", ", parameters.Select(parameter => Expression(parameter, depth - 1)))})";
            }

            if (kind < 28)
            {
                var subject = Pick("int", "Kind", "char");
                var pattern = subject switch { "int" => Pick("0", "> 5 and < 100", "< 0 or 255", "not 7"), "Kind" => Pick("Kind.Open", "Kind.Fused or Kind.Last", "not Kind.None"), _ => Pick("'a'", ">= 'A' and <= 'Z'") };
                return $"({Expression(subject, depth - 1)} switch {{ {pattern} => {Expression(type, depth - 1)}, _ => {Expression(type, depth - 1)} }})";
            }

            return type switch
            {
                "int" => Int(depth - 1),
                "long" => Choose(() => $"({Dynamic("long")} {Pick("+", "-", "*", "/", "%", "&", "|", "^")} {Expression(Pick("long", "int", "uint"), depth - 1)})", () => $"checked((long){Expression(Pick("double", "decimal", "uint", "byte"), depth - 1)})", () => $"({Expression("int", depth - 1)} * {Dynamic("long")})", () => $"({Dynamic("long")} {Pick("<<", ">>", ">>>")} {Expression("int", depth - 1)})", () => $"checked({Dynamic("long")} + {Expression("long", depth - 1)})", () => $"({Expression("int", depth - 1)} + {Dynamic("uint")})"),
                "uint" => Choose(() => $"({Dynamic("uint")} {Pick("+", "-", "*", "/", "%", "&", "^")} {Expression("uint", depth - 1)})", () => $"unchecked((uint){Dynamic("int")})", () => $"({Dynamic("uint")} {Pick("<<", ">>")} {Expression("int", depth - 1)})", () => $"checked((uint)({Dynamic("int")} + {Expression("byte", depth - 1)}))", () => $"(~{Dynamic("uint")})"),
                "byte" => Choose(() => $"unchecked((byte)({Dynamic("int")} + {Expression("int", depth - 1)}))", () => $"checked((byte)({Dynamic("byte")} + {Expression("byte", depth - 1)}))", () => $"((byte){Dynamic("char")})"),
                "double" => Double(depth - 1),
                "float" => Choose(() => $"({Dynamic("float")} {Pick("+", "-", "*", "/", "%")} {Expression(Pick("float", "int"), depth - 1)})", () => $"((float){Expression("double", depth - 1)})", () => $"(-{Expression("float", depth - 1)})", () => $"({Expression("int", depth - 1)} * {Dynamic("float")})"),
                "decimal" => Choose(() => $"({Dynamic("decimal")} {Pick("+", "-", "*", "/", "%")} {Expression(Pick("decimal", "int", "long"), depth - 1)})", () => $"((decimal){Expression(Pick("double", "float", "int"), depth - 1)})", () => $"decimal.Round({Expression("decimal", depth - 1)}, {Next(4)})", () => $"Math.Abs({Expression("decimal", depth - 1)})"),
                "bool" => Bool(depth - 1),
                "string" => Text(depth - 1),
                "char" => Choose(() => $"{Expression("string", depth - 1)}[{Expression("int", depth - 1)} & 1]", () => $"unchecked((char)({Dynamic("int")} & 127))", () => $"char.ToUpperInvariant({Expression("char", depth - 1)})", () => $"{Expression("string", depth - 1)}.FirstOrDefault()"),
                "int[]" => Array(depth - 1),
                "int?" => Choose(() => $"({Expression("int?", depth - 1)} {Pick("+", "-", "*")} {Expression(Pick("int", "int?"), depth - 1)})", () => $"((int?){Expression("int", depth - 1)})", () => $"({Expression("int?", depth - 1)} ?? {Expression("int?", depth - 1)})", () => $"(-{Expression("int?", depth - 1)})"),
                "double?" => Choose(() => $"({Expression("double?", depth - 1)} {Pick("+", "-", "*", "/")} {Expression(Pick("double", "int?"), depth - 1)})", () => $"((double?){Expression("double", depth - 1)})", () => $"({Expression("Item", depth - 1)} is {{ Number: > 0, Weight: var w{names} }} ? w{names++} : (double?)null)"),
                "Kind" => Choose(() => $"((Kind)({Expression("int", depth - 1)} & 7))", () => $"({Expression("Kind", depth - 1)} | {Expression("Kind", depth - 1)})", () => $"({Dynamic("Kind")} + {Next(3)})"),
                "Item" => Choose(() => $"new Item({Expression("int", depth - 1)}, {Expression("string", depth - 1)}, {Expression("double", depth - 1)})", () => $"({Expression("Item", depth - 1)} with {{ {Pick("Number", "Extra")} = {Expression("int", depth - 1)} }})", () => $"({Expression("Item", depth - 1)} with {{ Weight = {Expression("double", depth - 1)}, Label = {Expression("string", depth - 1)} }})"),
                "Point" => Choose(() => $"({Expression("Point", depth - 1)} + {Expression("Point", depth - 1)})", () => $"new Point({Expression("int", depth - 1)}, {Expression("double", depth - 1)})", () => $"({Expression("Point", depth - 1)} with {{ X = {Expression("int", depth - 1)} }})"),
                "(int A, string B)" => Choose(() => $"({Expression("int", depth - 1)}, {Expression("string", depth - 1)})", () => $"({Expression(type, depth - 1)} with {{ Item1 = {Expression("int", depth - 1)} }})"),
                "ElectricCurrent" => Choose(() => $"({Expression(type, depth - 1)} {Pick("+", "-")} {Expression(type, depth - 1)})", () => $"({Expression(type, depth - 1)} {Pick("*", "/")} {Expression(Pick("double", "int"), depth - 1)})", () => $"{Expression(Pick("double", "int", "decimal"), depth - 1)}.Amperes()", () => $"UnitMath.{Pick("Min", "Max")}({Expression(type, depth - 1)}, {Expression(type, depth - 1)})", () => $"({Expression("ElectricPotential", depth - 1)} / 2.Ohms())"),
                "ElectricPotential" => Choose(() => $"({Expression(type, depth - 1)} {Pick("+", "-")} {Expression(type, depth - 1)})", () => $"({Expression("ElectricCurrent", depth - 1)} * 1.5.Milliohms())", () => $"({Expression("double", depth - 1)} * {Expression(type, depth - 1)})", () => $"{Expression("int", depth - 1)}.Volts()"),
                _ => Choose(() => $"{Expression("Fuse", depth - 1)}.As({Expression("string", depth - 1)})", () => $"({Expression("Fuse", depth - 1)} with {{ RatedCurrent = {Expression("ElectricCurrent", depth - 1)} }})", () => $"new Fuse {{ PartNumber = {Expression("string", depth - 1)}, DcVoltageRating = {Expression("ElectricPotential", depth - 1)} }}"),
            };
        }

        private string Int(int depth)
        {
            if (Variable("Func<int, int>") is { } function && Chance(20))
                return $"{function}({Expression("int", depth)})";
            if (Variable("List<int>") is { } list && Chance(20))
                return Choose(() => $"{list}.Count", () => $"{list}[{Expression("int", depth)} & 1]", () => $"{list}.Sum(n => n & 15)");
            if (Variable("Cell") is { } cell && Chance(25))
                return Choose(() => $"{cell}.Value", () => $"{cell}.Next({Expression("int", depth)})", () => $"{cell}.Value++");
            if (Variable("object") is { } thing && Chance(20))
                return $"({thing} switch {{ int n{names} => n{names++}, string {{ Length: var l{names} }} => l{names++}, null => -1, _ => {Expression("int", depth)} }})";
            if (scope.Where(v => v is { Type: "int", Writable: true }).ToArray() is { Length: > 0 } found && Chance(12))
                return Choose(() => $"{Pick(found).Name}++", () => $"--{Pick(found).Name}", () => $"({Pick(found).Name} += {Expression("int", depth)})", () => $"({Pick(found).Name} = {Expression("int", depth)})");
            return Next(22) switch
            {
                < 5 => $"({Dynamic("int")} {Pick("+", "-", "*", "&", "|", "^")} {Expression(Pick("int", "int", "byte", "char"), depth)})",
                5 => $"({Expression("int", depth)} {Pick("/", "%")} {Dynamic("int")})",
                6 => $"({Expression("int", depth)} {Pick("<<", ">>", ">>>")} {Dynamic("int")})",
                7 => $"({Pick("-", "~", "+")}{Dynamic("int")})",
                8 => $"checked((int){Expression(Pick("double", "decimal", "float"), depth)})",
                9 => $"unchecked((int){Dynamic(Pick("long", "uint"))})",
                10 => $"checked({Dynamic("int")} {Pick("+", "-", "*")} {Expression("int", depth)})",
                11 => $"unchecked({Dynamic("int")} * {Expression("int", depth)} + {Expression("int", depth)})",
                12 => $"{Expression("string", depth)}.Length",
                13 => $"{Expression("int[]", depth)}.{Pick("Length", "Sum(n => n & 255)", "Count(n => n > 3)", "Aggregate(1, (a, b) => a * 31 + b)", "FirstOrDefault()", "DefaultIfEmpty(4).Max()", "Distinct().Count()")}",
                14 => $"{Expression("int[]", depth)}[{Expression("int", depth)} & 3]",
                15 => $"({Expression("int?", depth)} ?? {Expression("int", depth)})",
                16 => $"{Expression("Item", depth)}.{Pick("Number", "Extra")}",
                17 => $"{Expression("(int A, string B)", depth)}.Item1",
                18 => $"Math.{Pick("Min", "Max")}({Expression("int", depth)}, {Expression("int", depth)})",
                19 => $"((int){Expression("Kind", depth)})",
                20 => $"{Expression("Point", depth)}.X",
                _ => $"{Expression(Pick("int", "double", "decimal"), depth)}.CompareTo({Literal("int")})",
            };
        }

        private string Double(int depth)
        {
            if (Variable("double(double)") is { } function && Chance(25))
                return $"{function}({Expression("double", depth)})";
            return Next(12) switch
            {
                < 4 => $"({Expression("double", depth)} {Pick("+", "-", "*", "/", "%")} {Expression(Pick("double", "int", "long", "float"), depth)})",
                4 => $"Math.{Pick("Sqrt", "Floor", "Ceiling", "Abs", "Round", "Exp", "Log", "Sin", "Truncate")}({Expression("double", depth)})",
                5 => $"((double){Expression(Pick("int", "decimal", "float", "long"), depth)})",
                6 => $"({Expression("int", depth)} / {Dynamic("double")})",
                7 => $"({Expression("double?", depth)} ?? {Expression("double", depth)})",
                8 => $"{Expression("Item", depth)}.{Pick("Weight", "Total")}",
                9 => $"{Expression("ElectricCurrent", depth)}.{Pick("Amperes", "Milliamperes")}",
                10 => $"({Expression("ElectricPotential", depth)} / {Expression("ElectricPotential", depth)})",
                _ => $"Math.Pow({Expression("double", depth)}, {Next(4)})",
            };
        }

        private string Bool(int depth)
        {
            var compared = Pick("int", "long", "double", "decimal", "char", "int?", "float", "uint", "Kind", "ElectricCurrent");
            return Next(14) switch
            {
                < 4 => $"({Expression(compared, depth)} {Pick("<", "<=", ">", ">=")} {Expression(compared, depth)})",
                4 => $"({Expression("int", depth)} {Pick("==", "!=")} {Expression(Pick("long", "double", "byte", "int?"), depth)})",
                5 => $"({Expression("bool", depth)} {Pick("&&", "||", "&", "|", "^", "==")} {Expression("bool", depth)})",
                6 => $"(!{Expression("bool", depth)})",
                7 => $"({Expression("string", depth)} {Pick("==", "!=")} {Expression("string", depth)})",
                8 => $"({Expression(Pick("Item", "Point", "(int A, string B)"), depth)} is var q{names} && q{names++}.Equals({Dynamic(Pick("Item", "Point", "(int A, string B)"))}))",
                9 => $"({Expression("Item", depth)} == {Expression("Item", depth)})",
                10 => $"({Expression("int[]", depth)} is [{Pick("", "1, ..", ".., > 2", "_, .. var r" + names++ + ", _")}])",
                11 => $"{Expression("int[]", depth)}.{Pick("Any(n => n < 0)", "All(n => n < 9)", "Contains(" + Expression("int", depth) + ")")}",
                12 => $"({Expression("double?", depth)} is {Pick("null", "> 0.2", "not null and < 3")})",
                _ => $"{Expression("string", depth)}.{Pick("Contains", "StartsWith", "EndsWith")}({Expression("string", depth)}, StringComparison.Ordinal)",
            };
        }

        private string Text(int depth) => Next(16) switch
        {
            < 3 => $"Cut.Of({Expression("string", depth)} + {Expression(Pick("string", "int", "double", "char", "bool", "decimal", "int?", "Kind", "float"), depth)})",
            3 or 4 => $"Cut.Of($\"{{{Expression("int", depth)}}}-{{{Expression("double", depth)}{Pick("", ":0.00", ":E3", ",12", ":N1", ",-9:F2")}}}\")",
            5 => $"Cut.Of($\"{{{Expression(Pick("long", "byte", "uint"), depth)}{Pick("", ":X", ":D5", ",6")}}}{{{Expression(Pick("bool", "char", "Kind", "string"), depth)}}}\")",
            6 => $"{Expression("string", depth)}.{Pick("ToUpperInvariant()", "Trim()", "PadLeft(6)", "PadRight(4, '.')", "Replace(\"1\", \"-\", StringComparison.Ordinal)", "Insert(0, \"<\")", "ToLowerInvariant()")}",
            7 => $"Cut.Of(string.Join({Pick("\",\"", "\"\"", "';'")}, {Expression("int[]", depth)}))",
            8 => $"{Expression(Pick("Item", "Point", "(int A, string B)"), depth)}.ToString()",
            9 => $"{Expression("Kind", depth)}.ToString({Pick("", "\"D\"", "\"X\"")})",
            10 => $"{Expression(Pick("double", "decimal", "float"), depth)}.ToString({Pick("\"0.###\"", "\"G4\"", "\"F1\"", "\"P0\"")}, CultureInfo.InvariantCulture)",
            11 => $"{Expression("Item", depth)}.Label",
            12 => $"{Expression("(int A, string B)", depth)}.Item2",
            13 => $"{Expression("string", depth)}[{Pick("..1", "1..", "^1..", "..")}]",
            14 => $"string.Concat({Expression("string", depth)}.Where(c => c != 'a').Reverse())",
            _ => $"({Expression("Fuse", depth)}.PartNumber ?? {Expression("string", depth)})",
        };

        private string Array(int depth) => Next(9) switch
        {
            < 3 => $"((int[])[{Expression("int", depth)}, .. Cut.Of({Expression("int[]", depth)}), {Expression("int", depth)}])",
            3 => $"{Expression("int[]", depth)}.Select(n => {WithVariable("int", "n", () => Expression("int", Math.Min(depth, 1)))}).ToArray()",
            4 => $"{Expression("int[]", depth)}.{Pick("Where(n => n % 2 == 0)", "OrderBy(n => n & 7)", "OrderDescending()", "Skip(1)", "Take(2)", "Distinct()", "Append(3)", "Where((n, i) => i > 0)")}.ToArray()",
            5 => $"Enumerable.Range({Next(5)}, {Expression("int", depth)} & 3).ToArray()",
            6 => $"{Expression("int[]", depth)}[{Pick("1..", "..^1", "..")}]",
            7 => $"(from a in {Expression("int[]", depth)} where a != {Next(4)} let b = a ^ {Next(9)} orderby b descending select b + a).ToArray()",
            _ => $"{Expression("int[]", depth)}.Zip({Expression("int[]", depth)}, (a, b) => a - b).ToArray()",
        };
    }

    private sealed record Variable(string Type, string Name, bool Writable);
}
