# The fonts compiled into the program, so that drawings look the same on every machine and need no font folder.
# Included from src/CMakeLists.txt after the drawing room is declared.
#
# DejaVu Sans Condensed (fonts-dejavu-extra) is cut down at build time by subset_dejavu.py (python3-fonttools).
# Routed Gothic (fonts-routed-gothic) goes in whole: its licence (OFL 1.1, reserved name) asks for a new name on a
# changed copy. A font of another version would move every drawing, so its digest is checked.

option(RAYFLECK_ANY_FONTS "Accept font files whose digest is not the recorded one; drawings may then differ" OFF)

function(rayfleck_font variable file folder digest package)
  find_file(${variable} ${file} PATHS /usr/share/fonts/truetype/${folder} /usr/share/fonts/${folder}
            /usr/local/share/fonts ${ARGN})
  if(NOT ${variable})
    message(FATAL_ERROR "${file} not found: install ${package}, or set -D${variable}=FILE")
  endif()
  file(SHA256 ${${variable}} found)
  if(NOT found STREQUAL digest AND NOT RAYFLECK_ANY_FONTS)
    message(FATAL_ERROR "${${variable}} is another version of the font than drawings are tested with; "
                        "-DRAYFLECK_ANY_FONTS=ON takes it all the same")
  endif()
endfunction()

rayfleck_font(RAYFLECK_FONT_SANS DejaVuSansCondensed.ttf dejavu
              2d8aa290adcf1ebcbb35f63e57cf32941b012eaab4b65096b904112cf3bac972 fonts-dejavu-extra)
rayfleck_font(RAYFLECK_FONT_SANS_BOLD DejaVuSansCondensed-Bold.ttf dejavu
              6d2f2481e2aae944e8411cc5be515c69503ff7f5db52f2c67bcbe5d4de6bec13 fonts-dejavu-extra)
rayfleck_font(RAYFLECK_FONT_LETTERING routed-gothic.ttf routed-gothic
              11f90db97172043a955522b83a96ca7e459f490623da39e102f03ba0142a098e fonts-routed-gothic)

# More than one Python may be installed; the one that has fontTools is wanted.
if(NOT RAYFLECK_FONT_PYTHON)
  foreach(python /usr/bin/python3 python3 python)
    execute_process(COMMAND ${python} -c "import fontTools.subset" RESULT_VARIABLE missing OUTPUT_QUIET ERROR_QUIET)
    if(missing STREQUAL "0")
      set(RAYFLECK_FONT_PYTHON ${python} CACHE STRING "Python with fontTools, cuts the fonts down at build time")
      break()
    endif()
  endforeach()
endif()
if(NOT RAYFLECK_FONT_PYTHON)
  message(FATAL_ERROR "no Python with fontTools found: install python3-fonttools, or set -DRAYFLECK_FONT_PYTHON=PROGRAM")
endif()

set(fonts_here ${CMAKE_CURRENT_LIST_DIR})
set(fonts_built ${CMAKE_BINARY_DIR}/fonts)
file(MAKE_DIRECTORY ${fonts_built})
foreach(face SANS SANS_BOLD)
  add_custom_command(OUTPUT ${fonts_built}/${face}.ttf
                     COMMAND ${RAYFLECK_FONT_PYTHON} ${fonts_here}/subset_dejavu.py ${RAYFLECK_FONT_${face}}
                             ${fonts_built}/${face}.ttf
                     DEPENDS ${fonts_here}/subset_dejavu.py ${RAYFLECK_FONT_${face}}
                     COMMENT "Cutting down ${RAYFLECK_FONT_${face}}" VERBATIM)
endforeach()

target_sources(drawing PRIVATE ${fonts_here}/builtin_fonts.cpp ${fonts_here}/truetype.cpp
               ${fonts_here}/characters.cpp)
set(fonts_files ${fonts_built}/SANS.ttf ${fonts_built}/SANS_BOLD.ttf ${RAYFLECK_FONT_LETTERING})
set_source_files_properties(${fonts_here}/builtin_fonts.cpp PROPERTIES OBJECT_DEPENDS "${fonts_files}"
  COMPILE_DEFINITIONS "FONT_SANS=\"${fonts_built}/SANS.ttf\";FONT_SANS_BOLD=\"${fonts_built}/SANS_BOLD.ttf\";FONT_LETTERING=\"${RAYFLECK_FONT_LETTERING}\"")

# The licences of the fonts travel with the program.
foreach(package fonts-dejavu-extra fonts-routed-gothic)
  if(EXISTS /usr/share/doc/${package}/copyright)
    install(FILES /usr/share/doc/${package}/copyright DESTINATION share/doc/rayfleck/fonts RENAME ${package}.txt)
  endif()
endforeach()
