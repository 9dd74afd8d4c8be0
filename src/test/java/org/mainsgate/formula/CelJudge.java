package org.mainsgate.formula;

import static dev.cel.common.types.SimpleType.BOOL;
import static dev.cel.common.types.SimpleType.DOUBLE;
import static dev.cel.common.types.SimpleType.DYN;
import static dev.cel.common.types.SimpleType.STRING;

import dev.cel.bundle.Cel;
import dev.cel.bundle.CelBuilder;
import dev.cel.bundle.CelFactory;
import dev.cel.common.CelErrorCode;
import dev.cel.common.CelFunctionDecl;
import dev.cel.common.CelOverloadDecl;
import dev.cel.common.CelValidationException;
import dev.cel.common.types.ListType;
import dev.cel.common.types.MapType;
import dev.cel.extensions.CelExtensions;
import dev.cel.parser.CelStandardMacro;
import dev.cel.runtime.CelEvaluationException;
import dev.cel.runtime.CelFunctionBinding;
import org.mainsgate.quantity.Truth;

/** An evaluator of the Common Expression Language . */
final class CelJudge {
  private final Cel cel;

  private CelJudge(Cel cel) {
    this.cel = cel;
  }

  /** A judge for all worlds with the same names. */
  static CelJudge of(World world) {
    // The newer planner of 0.14.0 takes an error under `!` or `?:` for a fault of types.
    CelBuilder cel =
        CelFactory.legacyCelBuilder()
            .setStandardMacros(CelStandardMacro.STANDARD_MACROS)
            .addCompilerLibraries(CelExtensions.math(2))
            .addRuntimeLibraries(CelExtensions.math(2))
            .setResultType(BOOL)
            .addVar("nothing", MapType.create(STRING, DOUBLE));
    world.numbers().keySet().forEach(name -> cel.addVar(CelText.variable(name), DOUBLE));
    world.choices().keySet().forEach(name -> cel.addVar(CelText.variable(name), STRING));
    ListType things = ListType.create(MapType.create(STRING, DYN));
    world.lists().keySet().forEach(kind -> cel.addVar(kind, things));
    addFunction(cel, "ln", CelFunctionBinding.from("ln_double", Double.class, Math::log));
    addFunction(
        cel, "exp2", CelFunctionBinding.from("exp2_double", Double.class, x -> Math.pow(2, x)));
    return new CelJudge(cel.build());
  }

  private static void addFunction(CelBuilder cel, String name, CelFunctionBinding binding) {
    cel.addFunctionDeclarations(
        CelFunctionDecl.newFunctionDeclaration(
            name, CelOverloadDecl.newGlobalOverload(name + "_double", DOUBLE, DOUBLE)));
    cel.addFunctionBindings(binding);
  }

  /** What CEL says; undecided where it has no value for a part that matters. */
  Truth says(String text, World world) {
    try {
      return Truth.of(
          (Boolean) cel.createProgram(cel.compile(text).getAst()).eval(CelText.facts(world)));
    } catch (CelEvaluationException undefined) {
      if (undefined.getErrorCode() == CelErrorCode.ATTRIBUTE_NOT_FOUND) {
        return Truth.UNDECIDED;
      }
      throw new AssertionError(text, undefined);
    } catch (CelValidationException fault) {
      throw new AssertionError(text, fault);
    }
  }
}
